using System.Globalization;

namespace SquadAnalytics;

/// <summary>The confidence level of an interval, strictly between 0 and 1.</summary>
/// <remarks><c>default</c> is 90 %, the level for decisions about change (each tail 5 %).</remarks>
public readonly record struct ConfidenceLevel
{
    private const double Default = 0.90;
    private readonly double _fraction;

    /// <summary>Makes a confidence level.</summary>
    /// <param name="fraction">A number strictly between 0 and 1, for example 0.90.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fraction is not strictly between 0 and 1.</exception>
    public ConfidenceLevel(double fraction)
    {
        if (!(fraction > 0 && fraction < 1))
            throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "A confidence level lies strictly between 0 and 1, for example 0.90.");
        _fraction = fraction;
    }

    /// <summary>90 %: for decisions about change, where each tail is a one-sided 5 % rule.</summary>
    public static ConfidenceLevel Ninety { get; } = new(0.90);

    /// <summary>95 %: the preset of the student's report.</summary>
    public static ConfidenceLevel NinetyFive { get; } = new(0.95);

    /// <summary>The level as a fraction, for example 0.90.</summary>
    public double Fraction => _fraction == 0 ? Default : _fraction;

    /// <summary>The probability below the upper limit of a two-sided interval: (1 + level) / 2.</summary>
    public double UpperTailProbability => (1 + Fraction) / 2;

    /// <summary>The probability left out on both sides together: 1 - level.</summary>
    public double Alpha => 1 - Fraction;

    /// <summary>Whether two levels are the same; <c>default</c> equals 90 %.</summary>
    public bool Equals(ConfidenceLevel other) => Fraction.Equals(other.Fraction);

    /// <inheritdoc />
    public override int GetHashCode() => Fraction.GetHashCode();

    /// <summary>The level as a percentage, for example <c>90 %</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{100 * Fraction:0.##} %");
}
