using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>What repeating the test buys: the noise of means, and how many tests bring it down to what matters.</summary>
public static class NumberOfTests
{
    /// <summary>How many tests must be averaged so that the noise of the mean is at most the smallest worthwhile change: m = ⌈(TE / S)²⌉, TE the typical error of one test.</summary>
    /// <remarks>Assumes independent tests with the same noise. Source: algebra.</remarks>
    /// <exception cref="ArgumentException">Error and smallest worthwhile change are in different units.</exception>
    public static Estimate Needed(TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile)
    {
        var ratio = SignalAndNoise.Ratio(typicalError, worthwhile);
        var unrounded = ratio * ratio;
        // A ratio that is whole up to rounding needs no further test.
        return new Estimate(Math.Max(1, Math.Ceiling(unrounded - 1e-9)), Unit.Sessions, typicalError.Estimate.Observations,
            string.Create(CultureInfo.InvariantCulture, $"(typical error / smallest worthwhile change)² = {unrounded:0.000}, rounded up"));
    }

    /// <summary>The chance that the mean of m tests lies within the smallest worthwhile change of the true total: 2 T(√m S / TE) - 1, T the t distribution with the degrees of freedom of TE.</summary>
    /// <remarks>Source: the distribution of an estimate about its true value, textbook. Assumes tests that vary independently about one true total.</remarks>
    /// <param name="typicalError">The typical error TE of one test.</param>
    /// <param name="worthwhile">The smallest worthwhile change S.</param>
    /// <param name="tests">Number of tests m; 1 or more.</param>
    /// <exception cref="ArgumentException">Error and smallest worthwhile change are in different units.</exception>
    public static Estimate ChanceWithin(TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, int tests)
    {
        var bound = Math.Sqrt(Require.AtLeast(1, tests)) / SignalAndNoise.Ratio(typicalError, worthwhile);
        return new Estimate(1 - 2 * StudentTDistribution.Cdf(-bound, typicalError.DegreesOfFreedom), Unit.Probability, typicalError.Estimate.Observations, "t distribution of a mean about the true total") { DegreesOfFreedom = typicalError.DegreesOfFreedom };
    }

    /// <summary>How many tests must be averaged so that the interval of the mean is no wider than plus and minus the smallest worthwhile change: m = ⌈(t TE / S)²⌉, t the t quantile with the degrees of freedom of TE.</summary>
    /// <inheritdoc cref="ChanceWithin" path="/remarks"/>
    /// <param name="typicalError">The typical error TE of one test.</param>
    /// <param name="worthwhile">The smallest worthwhile change S.</param>
    /// <param name="level">The chance that is wanted; 90 % by default.</param>
    /// <exception cref="ArgumentException">Error and smallest worthwhile change are in different units.</exception>
    public static Estimate NeededWithin(TypicalErrorResult typicalError, SmallestWorthwhileChange worthwhile, ConfidenceLevel level = default)
    {
        var ratio = SignalAndNoise.Ratio(typicalError, worthwhile) * StudentTDistribution.UpperQuantile(level.Alpha / 2, typicalError.DegreesOfFreedom);
        return new Estimate(Math.Max(1, Math.Ceiling(ratio * ratio - 1e-9)), Unit.Sessions, typicalError.Estimate.Observations, "(t × typical error / smallest worthwhile change)², rounded up");
    }

    /// <summary>Noise of the mean of m tests, TE / √m.</summary>
    /// <remarks>Assumes independent tests with the same noise. Source: algebra.</remarks>
    /// <param name="typicalError">The typical error of one test.</param>
    /// <param name="tests">Number of tests m; 1 or more.</param>
    public static Estimate ErrorOfMean(TypicalErrorResult typicalError, int tests)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        return Scaled(typicalError, Math.Sqrt(1.0 / Require.AtLeast(1, tests)), "typical error / √tests");
    }

    /// <summary>Standard error of a change between the means of two sets of tests, TE √(1/m1 + 1/m2).</summary>
    /// <remarks>Assumes independent tests with the same noise. Source: algebra.</remarks>
    /// <param name="typicalError">The typical error of one test.</param>
    /// <param name="baselineTests">Number of earlier tests; 1 or more.</param>
    /// <param name="laterTests">Number of later tests; 1 or more.</param>
    public static Estimate ErrorOfChange(TypicalErrorResult typicalError, int baselineTests, int laterTests)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        return Scaled(typicalError, Math.Sqrt(1.0 / Require.AtLeast(1, baselineTests) + 1.0 / Require.AtLeast(1, laterTests)), "typical error √(1/earlier + 1/later)");
    }

    /// <summary>Reliability of the mean of several tests from that of one, k ρ / (1 + (k - 1) ρ) (Spearman and Brown).</summary>
    /// <remarks>Assumes parallel tests with independent noise. Source: the formula of Spearman and Brown, textbook.</remarks>
    /// <param name="ofOneTest">An intraclass correlation of single tests.</param>
    /// <param name="tests">Number of tests k; 1 or more.</param>
    public static Estimate ReliabilityOfMean(Estimate ofOneTest, int tests)
    {
        ArgumentNullException.ThrowIfNull(ofOneTest);
        return new Estimate(IntraclassCorrelation.Stepped(ofOneTest.Value, Require.AtLeast(1, tests)), Unit.None, ofOneTest.Observations, $"Spearman-Brown from {ofOneTest.Method}");
    }

    private static Estimate Scaled(TypicalErrorResult typicalError, double factor, string method) =>
        new(typicalError.Estimate.Value * factor, typicalError.Estimate.Unit, typicalError.Estimate.Observations, method) { DegreesOfFreedom = typicalError.DegreesOfFreedom };
}
