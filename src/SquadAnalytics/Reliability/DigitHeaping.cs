using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>Last digits of hand-written times: heaping on whole or half seconds means that the true resolution is coarser than written.</summary>
public static class DigitHeaping
{
    private const int Needed = 50;

    /// <summary>Tests the last digits of times.</summary>
    /// <remarks>χ² = Σ (count - n/10)² / (n/10) against equal shares, 9 degrees of freedom; share of 0 and 5 against 0.2 by the exact two-sided binomial (sum of all outcomes no more likely than the one observed).
    /// Assumes that true last digits are spread evenly, as they are where times spread over several seconds. Time grows linearly. Source: textbook tests of counts.</remarks>
    /// <param name="timesSeconds">The times as written.</param>
    /// <param name="step">The step they are written in, for example 0.1 s; above 0.</param>
    /// <returns>The tests, or <see cref="Refusal.TooFewObservations"/> below 50 times.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The step is not above 0.</exception>
    public static Answer<DigitHeapingResult> Fit(IReadOnlyList<double> timesSeconds, Seconds step)
    {
        ArgumentNullException.ThrowIfNull(timesSeconds);
        Internals.Require.Positive(step.Value, nameof(step));
        var counts = new int[10];
        foreach (var time in timesSeconds) counts[(int)(Math.Round(time / step.Value) % 10)]++;
        var n = timesSeconds.Count;
        if (n < Needed) return new NotEstimable("digit heaping", Refusal.TooFewObservations, Needed, n, "times");
        var equal = ChiSquaredTest.Fit(counts).GetOrThrow();
        var round = BinomialTest.Fit(counts[0] + counts[5], n, 0.2);
        return new DigitHeapingResult
        {
            Counts = counts,
            ChiSquared = new Estimate(equal.Statistic, Unit.None, n, "chi-squared against equal shares") { DegreesOfFreedom = equal.DegreesOfFreedom, PValue = equal.PValue },
            RoundShare = new Estimate(round.Share, Unit.Probability, n, "exact binomial against 0.2") { PValue = round.PValue },
        };
    }
}
