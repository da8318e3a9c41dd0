using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Reliability;

/// <summary>What repeating the test buys: the noise of means, and how many tests bring it down to what matters.</summary>
public static class NumberOfTests
{
    /// <summary>How many tests must be averaged so that the noise of the mean is at most the smallest worthwhile change: m = ⌈(TE / S)²⌉.</summary>
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
