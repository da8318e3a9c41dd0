namespace SquadAnalytics.Internals;

/// <summary>p-values adjusted for the number of questions asked.</summary>
internal static class AdjustedPValues
{
    /// <summary>Benjamini and Hochberg: p_(i) becomes min over j >= i of min(1, n p_(j) / j).</summary>
    public static double[] FalseDiscovery(double[] pValues)
    {
        var order = Enumerable.Range(0, pValues.Length).OrderByDescending(i => pValues[i]).ToArray();
        var adjusted = new double[pValues.Length];
        double smallest = 1;
        for (var place = 0; place < order.Length; place++)
        {
            smallest = Math.Min(smallest, pValues.Length * pValues[order[place]] / (order.Length - place));
            adjusted[order[place]] = smallest;
        }

        return adjusted;
    }

    /// <summary>Holm: p_(i) becomes max over j &lt;= i of min(1, (n - j + 1) p_(j)).</summary>
    public static double[] Holm(double[] pValues)
    {
        var order = Enumerable.Range(0, pValues.Length).OrderBy(i => pValues[i]).ToArray();
        var adjusted = new double[pValues.Length];
        double largest = 0;
        for (var place = 0; place < order.Length; place++)
        {
            largest = Math.Max(largest, Math.Min(1, (order.Length - place) * pValues[order[place]]));
            adjusted[order[place]] = largest;
        }

        return adjusted;
    }
}
