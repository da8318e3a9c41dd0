namespace SquadAnalytics.Statistics;

/// <summary>Adjusted p-values for several questions asked at once; each keeps its place.</summary>
public static class MultipleTesting
{
    /// <summary>Bonferroni: p times the number of questions, at most 1. Holds the chance of any false finding.</summary>
    /// <remarks>Assumes nothing about the dependence of the p-values. Source: Bonferroni's inequality, textbook.</remarks>
    /// <exception cref="ArgumentException">A p-value is outside 0 to 1.</exception>
    public static IReadOnlyList<double> Bonferroni(IReadOnlyList<double> pValues)
    {
        var p = Checked(pValues);
        return Array.ConvertAll(p, value => Math.Min(1, p.Length * value));
    }

    /// <summary>Holm: as Bonferroni, stepping down from the smallest p; never less powerful.</summary>
    /// <remarks>Adjusted p_(i) = max over j &lt;= i of min(1, (m - j + 1) p_(j)). Assumes nothing about the dependence of the p-values. Holm (1979), Scand J Stat 6:65-70 (from memory).</remarks>
    /// <exception cref="ArgumentException">A p-value is outside 0 to 1.</exception>
    public static IReadOnlyList<double> Holm(IReadOnlyList<double> pValues)
    {
        var p = Checked(pValues);
        var largest = 0.0;
        return InOrder(p, ascending: true, (value, place) => largest = Math.Max(largest, Math.Min(1, (p.Length - place) * value)));
    }

    /// <summary>Benjamini-Hochberg: holds the expected share of false findings among the findings.</summary>
    /// <remarks>Adjusted p_(i) = min over j >= i of min(1, m p_(j) / j). Assumes independent p-values, or positive dependence. Benjamini &amp; Hochberg (1995), J R Stat Soc B 57:289-300 (from memory).</remarks>
    /// <exception cref="ArgumentException">A p-value is outside 0 to 1.</exception>
    public static IReadOnlyList<double> BenjaminiHochberg(IReadOnlyList<double> pValues)
    {
        var p = Checked(pValues);
        var smallest = 1.0;
        return InOrder(p, ascending: false, (value, place) => smallest = Math.Min(smallest, p.Length / (double)(p.Length - place) * value));
    }

    private static double[] InOrder(double[] p, bool ascending, Func<double, int, double> adjust)
    {
        var order = Enumerable.Range(0, p.Length).OrderBy(i => ascending ? p[i] : -p[i]).ToArray();
        var adjusted = new double[p.Length];
        for (var place = 0; place < order.Length; place++) adjusted[order[place]] = adjust(p[order[place]], place);
        return adjusted;
    }

    private static double[] Checked(IReadOnlyList<double> pValues)
    {
        var p = Numbers.Of(pValues, 0);
        foreach (var value in p)
        {
            if (value is < 0 or > 1) throw new ArgumentException(FormattableString.Invariant($"pValues must lie between 0 and 1, but one is {value}."), nameof(pValues));
        }

        return p;
    }
}
