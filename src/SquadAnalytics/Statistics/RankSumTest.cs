namespace SquadAnalytics.Statistics;

/// <summary>Wilcoxon's rank-sum (Mann-Whitney) test of two independent samples, with the Hodges-Lehmann shift.</summary>
/// <remarks>
/// W is the number of pairs in which the first sample's number is larger, ties counting half; the p-value is exact whatever the ties. The
/// shift is the median of all differences first minus second; its limits are the k-th lowest and k-th highest, k from the exact
/// distribution without ties. Mann &amp; Whitney (1947), Ann Math Stat 18:50-60 (from memory; checked against R 4.2.2).
/// Time grows with the cube of the numbers: at most 200 in both samples together.
/// </remarks>
public sealed record RankSumTest
{
    private const int MostNumbers = 200;

    private RankSumTest(double w, double less, double greater, double shift, Interval? interval) =>
        (W, PValueLess, PValueGreater, Shift, Interval) = (w, less, greater, shift, interval);

    /// <summary>Pairs in which the first sample's number is larger.</summary>
    public double W { get; }

    /// <summary>Exact two-sided p-value.</summary>
    public double PValue => Math.Min(1, 2 * Math.Min(PValueLess, PValueGreater));

    /// <summary>Exact one-sided p-value against a first sample that is lower.</summary>
    public double PValueLess { get; }

    /// <summary>Exact one-sided p-value against a first sample that is higher.</summary>
    public double PValueGreater { get; }

    /// <summary>Median of all differences, first minus second.</summary>
    public double Shift { get; }

    /// <summary>Interval of the shift, or null where even the widest one has less than the level.</summary>
    public Interval? Interval { get; }

    /// <summary>Compares two samples.</summary>
    /// <remarks>Assumes two independent samples that differ by a shift at most.</remarks>
    /// <param name="first">First sample.</param>
    /// <param name="second">Second sample.</param>
    /// <param name="level">Confidence level of the shift's interval.</param>
    /// <returns>The test, or a refusal where a sample is empty (<see cref="Refusal.TooFewObservations"/>) or both together hold more than 200 numbers (<see cref="Refusal.TooManyObservations"/>).</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<RankSumTest> Fit(IReadOnlyList<double> first, IReadOnlyList<double> second, ConfidenceLevel level)
    {
        var (x, y) = (Numbers.Of(first, 0), Numbers.Of(second, 0));
        var (m, n) = (x.Length, y.Length);
        if (Math.Min(m, n) == 0) return new NotEstimable("the rank-sum test", Refusal.TooFewObservations, 1, 0, "observations in each sample");
        if (m + n > MostNumbers) return NotEstimable.TooMany("the rank-sum test", MostNumbers, m + n, "numbers in both samples together");
        var doubled = Ranks.Doubled([.. x, .. y]);
        var sum = doubled.Take(m).Sum();
        var exact = SumDistribution.OfSubset(doubled, m);
        double[] differences = [.. x.SelectMany(_ => y, (left, right) => left - right).Order()];
        var smallest = m * (m + 1) / 2;
        var untied = Ranks.Ties([.. x, .. y]).Length == 0 ? exact : SumDistribution.OfSubset([.. Enumerable.Range(1, m + n).Select(rank => 2 * rank)], m);
        var k = untied.Quantile(level.Alpha / 2) / 2 - smallest;
        Interval? interval = k > 0 ? new Interval(differences[k - 1], differences[^k], level) : null;
        return new RankSumTest(sum / 2.0 - smallest, exact.AtMost(sum), exact.AtLeast(sum), Descriptive.MedianOfSorted(differences), interval);
    }

    /// <summary>Shift, interval and p.</summary>
    public override string ToString() =>
        FormattableString.Invariant($"shift {Shift:G5}") + (Interval is { } interval ? $", {interval}" : "") + FormattableString.Invariant($", exact p {PValue:G3}");
}
