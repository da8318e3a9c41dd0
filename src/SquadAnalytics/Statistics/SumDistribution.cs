namespace SquadAnalytics.Statistics;

/// <summary>Exact null distributions of rank statistics, built up by adding one rank after another; probabilities, so no overflow.</summary>
internal sealed class SumDistribution
{
    private readonly double[] _probabilities;

    // Sums are counted in this unit: doubled ranks without ties are all even, which halves the work.
    private readonly int _unit;

    private SumDistribution(double[] probabilities, int unit) => (_probabilities, _unit) = (probabilities, unit);

    /// <summary>Sum of those scores whose fair coin shows heads.</summary>
    public static SumDistribution OfCoinFlips(IReadOnlyList<int> scores)
    {
        var (units, unit) = InUnits(scores);
        var probabilities = new double[units.Sum() + 1];
        probabilities[0] = 1;
        var top = 0;
        foreach (var score in units)
        {
            top += score;
            for (var sum = top; sum >= 0; sum--) probabilities[sum] = (probabilities[sum] + (sum >= score ? probabilities[sum - score] : 0)) / 2;
        }

        return new SumDistribution(probabilities, unit);
    }

    /// <summary>Sum of the scores of a random subset of given size.</summary>
    public static SumDistribution OfSubset(IReadOnlyList<int> scores, int size)
    {
        var (sorted, unit) = InUnits(scores);
        Array.Sort(sorted);
        var most = sorted.TakeLast(size).Sum();
        var bySize = new double[size + 1][];
        for (var chosen = 0; chosen <= size; chosen++) bySize[chosen] = new double[most + 1];
        bySize[0][0] = 1;
        var largest = new int[size + 1];
        for (var seen = 0; seen < sorted.Length; seen++)
        {
            var newcomer = sorted[seen];
            // Only sizes from which the wanted one can still be reached matter.
            for (var chosen = Math.Min(size, seen + 1); chosen >= Math.Max(0, size - (sorted.Length - seen - 1)); chosen--)
            {
                // Of all subsets of that size among the items seen so far, this share holds the newcomer.
                var share = chosen / (seen + 1.0);
                if (chosen > 0) largest[chosen] = largest[chosen - 1] + newcomer;
                var (own, smaller) = (bySize[chosen], chosen > 0 ? bySize[chosen - 1] : []);
                for (var sum = largest[chosen]; sum >= newcomer && chosen > 0; sum--) own[sum] = own[sum] * (1 - share) + smaller[sum - newcomer] * share;
                for (var sum = Math.Min(newcomer - 1, largest[chosen]); sum >= 0; sum--) own[sum] *= 1 - share;
            }
        }

        return new SumDistribution(bySize[size], unit);
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

        return new SumDistribution(probabilities, unit: 1);
    }

    /// <summary>P(sum &lt;= value).</summary>
    public double AtMost(int value) => Math.Min(1, Total(0, Math.Min((int)Math.Floor(value / (double)_unit), _probabilities.Length - 1)));

    /// <summary>P(sum >= value).</summary>
    public double AtLeast(int value) => Math.Min(1, Total(Math.Max((int)Math.Ceiling(value / (double)_unit), 0), _probabilities.Length - 1));

    /// <summary>The smallest value with P(sum &lt;= value) at or above a probability.</summary>
    public int Quantile(double probability)
    {
        var place = 0;
        for (var total = _probabilities[0]; total < probability * (1 - 1e-14) && place < _probabilities.Length - 1; total += _probabilities[++place])
        {
        }

        return place * _unit;
    }

    private double Total(int from, int to)
    {
        var sum = new CompensatedSum();
        for (var place = from; place <= to; place++) sum.Add(_probabilities[place]);
        return sum.Value;
    }

    private static (int[] Scores, int Unit) InUnits(IReadOnlyList<int> scores)
    {
        var unit = scores.All(int.IsEvenInteger) ? 2 : 1;
        return ([.. scores.Select(score => score / unit)], unit);
    }
}
