using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>Repeatability of a test done twice under the same conditions, where no change between the two is expected.</summary>
public static class Repeatability
{
    private const double Conventional = 1.96;

    /// <summary>Within-athlete standard deviation, coefficient of repeatability and relative scatter of paired values.</summary>
    /// <remarks>
    /// s_w = √(Σ d² / 2n), in the unit of the values, d = later minus earlier of n pairs: unlike the typical error it does not take the mean change out, so that practice between the tests is part of it. Coefficient 1.96 √2 s_w: 95 of
    /// 100 pairs of tests differ by less. Relative scatter 100 √(mean of (d² / 2) / m²), m the mean of the pair. Assumes normal differences and a scatter that does not grow with the level. Sources,
    /// from memory: Bland and Altman 1986, Lancet i:307-310; Bland and Altman 1996, BMJ 313:744.
    /// </remarks>
    /// <param name="earlier">The earlier value of each pair.</param>
    /// <param name="later">The later value of each pair.</param>
    /// <param name="unit">Unit of the values.</param>
    /// <returns>The repeatability, or <see cref="Refusal.TooFewPairs"/> below 3 pairs; the relative scatter refuses with <see cref="Refusal.NotComparable"/> where a pair's mean is not above 0.</returns>
    /// <exception cref="ArgumentException">The lists differ in length, or a number is not finite.</exception>
    public static Answer<RepeatabilityResult> FitPairs(IReadOnlyList<double> earlier, IReadOnlyList<double> later, Unit unit = Unit.Seconds)
    {
        var (first, second) = (Numbers.Of(earlier, 0), Numbers.Of(later, 0));
        Numbers.SameLength(first, second, nameof(earlier), nameof(later));
        var n = first.Length;
        if (n < 3) return new NotEstimable("the repeatability", Refusal.TooFewPairs, 3, n, "pairs of tests");
        double[] halves = [.. second.Zip(first, (after, before) => (after - before) * (after - before) / 2)];
        double[] means = [.. second.Zip(first, (after, before) => (after + before) / 2)];
        var within = Math.Sqrt(Descriptive.Mean(halves));
        return new RepeatabilityResult
        {
            WithinAthlete = new Estimate(within, unit, n, "√(Σ d² / 2n), the mean change not taken out") { DegreesOfFreedom = n },
            Coefficient = new Estimate(Conventional * Math.Sqrt(2) * within, unit, n, "1.96 √2 times the within-athlete SD"),
            Relative = means.All(mean => mean > 0)
                ? new Estimate(100 * Math.Sqrt(Descriptive.Mean([.. halves.Zip(means, (half, mean) => half / (mean * mean))])), Unit.Percent, n, "100 √ of the mean of (d² / 2) / mean²")
                : new NotEstimable("the relative scatter", Refusal.NotComparable, "pairs with a mean above 0", "one of 0 or less"),
        };
    }
}
