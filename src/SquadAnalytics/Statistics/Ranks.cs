namespace SquadAnalytics.Statistics;

/// <summary>Ranks with ties averaged, kept as whole numbers by doubling, so that equal ranks stay exactly equal.</summary>
internal static class Ranks
{
    /// <summary>Twice the average rank of each number.</summary>
    public static int[] Doubled(double[] values)
    {
        var sorted = Numbers.Sorted(values);
        return Array.ConvertAll(values, value =>
        {
            var first = CountBelow(sorted, value);
            var behind = CountBelow(sorted, Math.BitIncrement(value));
            return first + 1 + behind;
        });
    }

    /// <summary>Sizes of the groups of equal values, those of size 1 left out.</summary>
    public static int[] Ties<T>(IEnumerable<T> values)
        where T : notnull => [.. values.CountBy(value => value).Select(pair => pair.Value).Where(count => count > 1)];

    private static int CountBelow(double[] sorted, double value)
    {
        var (low, high) = (0, sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (sorted[middle] < value) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
