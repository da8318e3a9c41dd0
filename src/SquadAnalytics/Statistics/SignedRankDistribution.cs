using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Exact null distribution of Wilcoxon's signed-rank statistic V: the sum of the ranks 1 to n whose sign is positive, each with probability ½.</summary>
public static class SignedRankDistribution
{
    /// <summary>P(V &lt;= v).</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no observation.</exception>
    public static double Cdf(int v, int observations) => Of(observations).AtMost(v);

    /// <summary>P(V >= v).</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no observation.</exception>
    public static double AtLeast(int v, int observations) => Of(observations).AtLeast(v);

    /// <summary>The smallest v with P(V &lt;= v) at or above <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no observation, or the probability is not strictly between 0 and 1.</exception>
    public static int Quantile(double probability, int observations) => Of(observations).Quantile(Require.Probability(probability));

    private static SumDistribution Of(int observations) => SumDistribution.OfCoinFlips([.. Enumerable.Range(1, Require.AtLeast(1, observations))]);
}
