using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>One effect whose error variance is known, for example an athlete's change and the squared standard error of it.</summary>
public sealed record MeasuredEffect
{
    /// <summary>Makes an effect.</summary>
    /// <param name="label">Whose or what effect it is.</param>
    /// <param name="effect">The measured effect; finite.</param>
    /// <param name="variance">Its error variance, in squared units of the effect; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The effect is not finite, or the variance is not above 0.</exception>
    public MeasuredEffect(string label, double effect, double variance)
    {
        Label = Require.Text(label);
        Effect = Require.Finite(effect);
        Variance = Require.Positive(variance);
    }

    /// <summary>Whose or what effect it is.</summary>
    public string Label { get; }

    /// <summary>The measured effect.</summary>
    public double Effect { get; }

    /// <summary>Its error variance.</summary>
    public double Variance { get; }

    /// <summary>Label, effect and standard error.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Label}: {Effect:0.00##} (standard error {Math.Sqrt(Variance):0.00##})");
}
