using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Exact null distribution of Wilcoxon's signed-rank statistic V: the sum of the ranks 1 to n whose sign is positive, each with probability ½.</summary>
/// <remarks>Counted by adding one rank after another, so that time grows with the cube of n: at most 1,000. Source: textbook definition.</remarks>
public static class SignedRankDistribution
{
    private const int MostObservations = 1_000;

    /// <summary>P(V &lt;= v).</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no observation, or there are more than 1,000.</exception>
    public static double Cdf(int v, int observations) => Of(observations).AtMost(v);

    /// <summary>P(V >= v).</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no observation, or there are more than 1,000.</exception>
    public static double AtLeast(int v, int observations) => Of(observations).AtLeast(v);

    /// <summary>The smallest v with P(V &lt;= v) at or above <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no observation, or there are more than 1,000, or the probability is not strictly between 0 and 1.</exception>
    public static int Quantile(double probability, int observations) => Of(observations).Quantile(Require.Probability(probability));

    private static SumDistribution Of(int observations) => Require.AtLeast(1, observations) <= MostObservations
        ? SumDistribution.OfCoinFlips([.. Enumerable.Range(1, observations)])
        : throw new ArgumentOutOfRangeException(nameof(observations), observations, FormattableString.Invariant($"The exact distribution is counted up to {MostObservations} observations."));
}
