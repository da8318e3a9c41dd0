using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>A confidence interval: two limits, in the unit of the estimate they belong to, and their level.</summary>
/// <remarks><c>default</c> is the empty-width interval at 0 with level 90 %; analyses never return it.</remarks>
public readonly record struct Interval
{
    /// <summary>Makes an interval.</summary>
    /// <param name="lower">Lower limit; finite.</param>
    /// <param name="upper">Upper limit; finite, not below <paramref name="lower"/>.</param>
    /// <param name="level">Confidence level.</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite, or the limits are in the wrong order.</exception>
    public Interval(double lower, double upper, ConfidenceLevel level)
    {
        Lower = Require.Finite(lower);
        Upper = Require.Finite(upper);
        if (upper < lower)
            throw new ArgumentOutOfRangeException(nameof(upper), upper, $"The upper limit must not be below the lower limit {lower.ToString(CultureInfo.InvariantCulture)}.");
        ConfidenceLevel = level;
    }

    /// <summary>Lower limit.</summary>
    public double Lower { get; }

    /// <summary>Upper limit.</summary>
    public double Upper { get; }

    /// <summary>Confidence level.</summary>
    public ConfidenceLevel ConfidenceLevel { get; }

    /// <summary>Half the distance between the limits.</summary>
    public double HalfWidth => (Upper - Lower) / 2;

    /// <summary>Whether a number lies between the limits, limits included.</summary>
    public bool Contains(double number) => number >= Lower && number <= Upper;

    /// <summary>The interval with its level, for example <c>90 % interval 1.14 to 3.24</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{ConfidenceLevel} interval {Lower:0.##} to {Upper:0.##}");
}
