using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>The binomial distribution: successes in independent trials of equal probability.</summary>
/// <remarks>Numbers without a unit. Source: textbook definition.</remarks>
public static class BinomialDistribution
{
    /// <summary>P(X = successes).</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than one trial, or the probability is not strictly between 0 and 1.</exception>
    public static double Probability(int successes, int trials, double probability)
    {
        Require.AtLeast(1, trials);
        Require.Probability(probability);
        if (successes < 0 || successes > trials) return 0;
        if (successes == 0) return Math.Exp(trials * Elementary.LogOnePlus(-probability));
        if (successes == trials) return Math.Exp(trials * Math.Log(probability));
        double n = trials, failures = trials - successes;
        var log = SaddlePoint.StirlingError(n) - SaddlePoint.StirlingError(successes) - SaddlePoint.StirlingError(failures)
            - SaddlePoint.Deviance(successes, n * probability) - SaddlePoint.Deviance(failures, n * (1 - probability));
        return Math.Exp(log) * Math.Sqrt(n / (Math.Tau * successes * failures));
    }

    /// <summary>P(X &lt;= successes).</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than one trial, or the probability is not strictly between 0 and 1.</exception>
    public static double Cdf(int successes, int trials, double probability)
    {
        Require.AtLeast(1, trials);
        Require.Probability(probability);
        if (successes < 0) return 0;
        return successes >= trials ? 1 : BetaDistribution.UpperTail(probability, successes + 1.0, trials - successes);
    }

    /// <summary>P(X >= successes).</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are fewer than one trial, or the probability is not strictly between 0 and 1.</exception>
    public static double AtLeast(int successes, int trials, double probability)
    {
        Require.AtLeast(1, trials);
        Require.Probability(probability);
        if (successes <= 0) return 1;
        return successes > trials ? 0 : BetaDistribution.Cdf(probability, successes, trials - successes + 1.0);
    }
}
