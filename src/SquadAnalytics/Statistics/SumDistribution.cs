namespace SquadAnalytics.Statistics;

/// <summary>Exact null distributions of rank statistics, built up by adding one rank after another; probabilities, so no overflow.</summary>
internal sealed class SumDistribution
{
    private readonly double[] _probabilities;

    private SumDistribution(double[] probabilities) => _probabilities = probabilities;

    /// <summary>Sum of those scores whose fair coin shows heads.</summary>
    public static SumDistribution OfCoinFlips(IReadOnlyList<int> scores)
    {
        var probabilities = new double[scores.Sum() + 1];
        probabilities[0] = 1;
        var top = 0;
        foreach (var score in scores)
        {
            top += score;
            for (var sum = top; sum >= 0; sum--) probabilities[sum] = (probabilities[sum] + (sum >= score ? probabilities[sum - score] : 0)) / 2;
        }

        return new SumDistribution(probabilities);
    }

    /// <summary>Sum of the scores of a random subset of given size.</summary>
    public static SumDistribution OfSubset(IReadOnlyList<int> scores, int size)
    {
        var most = scores.OrderDescending().Take(size).Sum();
        var counts = new double[size + 1][];
        for (var chosen = 0; chosen <= size; chosen++) counts[chosen] = new double[most + 1];
        counts[0][0] = 1;
        for (var seen = 0; seen < scores.Count; seen++)
        {
            // With probability (chosen)/(seen + 1) the newcomer belongs to a subset of that size among the items seen so far.
            for (var chosen = Math.Min(size, seen + 1); chosen >= 0; chosen--)
            {
                var share = chosen / (seen + 1.0);
                for (var sum = most; sum >= 0; sum--)
                {
                    var without = counts[chosen][sum] * (1 - share);
                    var with = chosen > 0 && sum >= scores[seen] ? counts[chosen - 1][sum - scores[seen]] * share : 0;
                    counts[chosen][sum] = without + with;
                }
            }
        }

        return new SumDistribution(counts[size]);
    }

    /// <summary>Number of concordant pairs of a random order of n items.</summary>
    public static SumDistribution OfConcordantPairs(int items)
    {
        double[] probabilities = [1];
        for (var n = 2; n <= items; n++)
        {
            var next = new double[probabilities.Length + n - 1];
            for (var sum = 0; sum < probabilities.Length; sum++)
            {
                for (var added = 0; added < n; added++) next[sum + added] += probabilities[sum] / n;
            }

            probabilities = next;
        }

        return new SumDistribution(probabilities);
    }

    /// <summary>P(sum &lt;= value).</summary>
    public double AtMost(int value) => Math.Min(1, Total(0, Math.Min(value, _probabilities.Length - 1)));

    /// <summary>P(sum >= value).</summary>
    public double AtLeast(int value) => Math.Min(1, Total(Math.Max(value, 0), _probabilities.Length - 1));

    /// <summary>The smallest value with P(sum &lt;= value) at or above a probability.</summary>
    public int Quantile(double probability)
    {
        var value = 0;
        for (var total = _probabilities[0]; total < probability * (1 - 1e-14) && value < _probabilities.Length - 1; total += _probabilities[++value])
        {
        }

        return value;
    }

    private double Total(int from, int to)
    {
        var sum = new CompensatedSum();
        for (var value = from; value <= to; value++) sum.Add(_probabilities[value]);
        return sum.Value;
    }
}
