using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>How many tests before and after it takes to see one athlete's change through the noise of the test.</summary>
/// <remarks>A change of means of n tests each has the standard error TE √(2/n). Assumes normal, independent tests and a well-known typical error, hence normal quantiles. Hopkins (2000), Sports Med 30:1-15.</remarks>
public static class RepeatedTests
{
    /// <summary>Tests on each side, not rounded up, for which z TE √(2/n) equals the change.</summary>
    /// <param name="typicalError">Typical error of one test, in any unit.</param>
    /// <param name="change">The change that is to be seen, in the same unit.</param>
    /// <param name="level">Confidence level.</param>
    /// <param name="power">Chance with which a true change of that size is to be seen, or null for a half.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Needed(double typicalError, double change, ConfidenceLevel level, double? power = null)
    {
        var z = NormalDistribution.UpperQuantile(level.Alpha / 2) + (power is { } wanted ? NormalDistribution.Quantile(wanted) : 0);
        var ratio = z * Require.Positive(typicalError) / Require.Positive(change);
        return 2 * ratio * ratio;
    }

    /// <summary>Smallest change between two single tests that is more than noise: z √2 TE.</summary>
    /// <param name="typicalError">Typical error of one test, in any unit.</param>
    /// <param name="level">Confidence level.</param>
    /// <exception cref="ArgumentOutOfRangeException">The typical error is not above 0.</exception>
    public static double MinimalDetectableChange(double typicalError, ConfidenceLevel level) =>
        NormalDistribution.UpperQuantile(level.Alpha / 2) * Math.Sqrt(2) * Require.Positive(typicalError);
}
