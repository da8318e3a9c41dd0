using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Exact test of a share, and the sign test as its special case ½.</summary>
/// <param name="Successes">Successes.</param>
/// <param name="Trials">Trials.</param>
/// <param name="Probability">The share under the hypothesis.</param>
/// <param name="PValue">Two-sided p-value: all outcomes together that are no more likely than the one observed.</param>
/// <remarks>Clopper &amp; Pearson (1934), Biometrika 26:404-413, for the interval (from memory; checked against R 4.2.2).</remarks>
public sealed record BinomialTest(int Successes, int Trials, double Probability, double PValue)
{
    // Outcomes that are equally likely but for rounding count as no more likely.
    private const double Slack = 1 + 1e-7;

    /// <summary>Observed share.</summary>
    public double Share => Successes / (double)Trials;

    /// <summary>Exact (Clopper-Pearson) interval of the share.</summary>
    /// <remarks>Beta quantiles at α/2 of (successes, failures + 1) and at 1 - α/2 of (successes + 1, failures); 0 and 1 where there is no success or no failure. Assumes independent trials with one probability.</remarks>
    public Interval Interval(ConfidenceLevel level)
    {
        var tail = level.Alpha / 2;
        var lower = Successes == 0 ? 0 : BetaDistribution.Quantile(tail, Successes, Trials - Successes + 1);
        var upper = Successes == Trials ? 1 : BetaDistribution.Quantile(1 - tail, Successes + 1, Trials - Successes);
        return new Interval(lower, upper, level);
    }

    /// <summary>Tests a share.</summary>
    /// <remarks>Assumes independent trials with one probability.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">There is no trial, successes are outside 0 to trials, or the probability is not strictly between 0 and 1.</exception>
    public static BinomialTest Fit(int successes, int trials, double probability)
    {
        Require.AtLeast(1, trials);
        Require.Probability(probability);
        if (successes < 0 || successes > trials)
            throw new ArgumentOutOfRangeException(nameof(successes), successes, FormattableString.Invariant($"Successes lie between 0 and the {trials} trials."));
        var observed = BinomialDistribution.Probability(successes, trials, probability) * Slack;
        var sum = new CompensatedSum();
        for (var k = 0; k <= trials; k++)
        {
            var likely = BinomialDistribution.Probability(k, trials, probability);
            if (likely <= observed) sum.Add(likely);
        }

        return new BinomialTest(successes, trials, probability, Math.Min(1, sum.Value));
    }

    /// <summary>Sign test: are positive and negative differences equally frequent? Zero differences are left out.</summary>
    /// <remarks>Assumes independent differences. Source: the binomial test with ½, textbook.</remarks>
    /// <param name="differences">The differences.</param>
    /// <param name="decimals">Decimals to which they are rounded first; 8 by default.</param>
    /// <returns>The test, or <see cref="Refusal.TooFewObservations"/> where all differences are 0 or there is none.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<BinomialTest> Sign(IReadOnlyList<double> differences, int decimals = 8)
    {
        double[] nonZero = [.. Numbers.Of(differences, 0).Select(value => Math.Round(value, decimals, MidpointRounding.ToEven)).Where(value => value != 0)];
        if (nonZero.Length == 0) return new NotEstimable("the sign test", Refusal.TooFewObservations, 1, 0, "differences other than 0");
        return Fit(nonZero.Count(value => value > 0), nonZero.Length, 0.5);
    }
}
