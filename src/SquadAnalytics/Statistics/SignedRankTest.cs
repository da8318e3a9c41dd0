namespace SquadAnalytics.Statistics;

/// <summary>Wilcoxon's signed-rank test with the Hodges-Lehmann estimate: is the middle of some differences 0?</summary>
/// <remarks>
/// Differences are rounded first, so that equal ones tie. Zero differences are left out of the test; ties share their average rank, and
/// the p-value is exact whatever the ties up to 200 differences, from the normal distribution above, where time grows linearly. The estimate is the median of all Walsh averages (d_i + d_j)/2, i &lt;= j, zeros kept; its
/// limits are the k-th lowest and k-th highest, k from the distribution without ties. Assumes symmetric differences. Wilcoxon (1945),
/// Biometrics Bull 1:80-83; Hodges &amp; Lehmann (1963), Ann Math Stat 34:598-611 (from memory; checked against R 4.2.2).
/// </remarks>
public sealed record SignedRankTest
{
    private const int ExactUpTo = 200;

    private SignedRankTest(int observations, int nonZero, double v) => (Observations, NonZero, V) = (observations, nonZero, v);

    /// <summary>How many differences there are.</summary>
    public int Observations { get; }

    /// <summary>How many of them are not 0.</summary>
    public int NonZero { get; }

    /// <summary>Sum of the ranks of the positive differences.</summary>
    public double V { get; }

    /// <summary>Whether the p-values are exact: up to 200 differences.</summary>
    public bool IsExact { get; private init; }

    /// <summary>Two-sided p-value.</summary>
    public double PValue => Math.Min(1, 2 * Math.Min(PValueLess, PValueGreater));

    /// <summary>One-sided p-value against a middle above 0.</summary>
    public double PValueGreater { get; private init; }

    /// <summary>One-sided p-value against a middle below 0.</summary>
    public double PValueLess { get; private init; }

    /// <summary>Normal approximation of the two-sided p-value with continuity correction.</summary>
    public double NormalPValue { get; private init; }

    /// <summary>The same without continuity correction.</summary>
    public double NormalPValueUncorrected { get; private init; }

    /// <summary>Hodges-Lehmann estimate of the middle: median of the Walsh averages, in the differences' unit.</summary>
    public double HodgesLehmann { get; private init; }

    /// <summary>Interval of the middle, or null where even the widest one has less than the level.</summary>
    public Interval? Interval { get; private init; }

    /// <summary>The confidence that the interval actually has without ties, at least the level; null without interval.</summary>
    public double? AchievedConfidence { get; private init; }

    /// <summary>Tests differences.</summary>
    /// <param name="differences">The differences, later minus earlier.</param>
    /// <param name="level">Confidence level of the interval.</param>
    /// <param name="decimals">Decimals to which differences are rounded before ranking; 8 by default.</param>
    /// <returns>The test, or <see cref="Refusal.ZeroVariance"/> where all differences are 0 or there is none.</returns>
    /// <exception cref="ArgumentException">A number is not finite, or the decimals are outside 0 to 15.</exception>
    public static Answer<SignedRankTest> Fit(IReadOnlyList<double> differences, ConfidenceLevel level, int decimals = 8)
    {
        var d = Array.ConvertAll(Numbers.Of(differences, 0), value => Math.Round(value, decimals, MidpointRounding.ToEven));
        double[] nonZero = [.. d.Where(value => value != 0)];
        if (nonZero.Length == 0)
            return new NotEstimable("the signed-rank test", Refusal.ZeroVariance, "at least 1 difference other than 0", FormattableString.Invariant($"{d.Length} differences, all 0"));
        var sizes = Array.ConvertAll(nonZero, value => Math.Abs(value));
        var doubled = Ranks.Doubled(sizes);
        var doubledV = doubled.Where((_, i) => nonZero[i] > 0).Sum(rank => (long)rank);
        var (variance, v) = (Variance(nonZero.Length, Ranks.Ties(sizes)), doubledV / 2.0);
        var deviation = v - nonZero.Length * (nonZero.Length + 1.0) / 4;
        var test = new SignedRankTest(d.Length, nonZero.Length, v)
        {
            NormalPValue = NormalDistribution.TwoSidedPValue(Math.Max(0, Math.Abs(deviation) - 0.5) / Math.Sqrt(variance)),
            NormalPValueUncorrected = NormalDistribution.TwoSidedPValue(Math.Abs(deviation) / Math.Sqrt(variance)),
        };
        return d.Length <= ExactUpTo ? Exact(test, d, doubled, (int)doubledV, level) : Large(test, d, deviation, Math.Sqrt(variance), level);
    }

    /// <summary>Tests paired samples: later minus earlier.</summary>
    /// <param name="earlier">The earlier values.</param>
    /// <param name="later">The later values of the same athletes, in the same order.</param>
    /// <param name="level">Confidence level of the interval.</param>
    /// <returns>The test, or <see cref="Refusal.ZeroVariance"/> where all differences are 0 or there is none.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<SignedRankTest> FitPairs(IReadOnlyList<double> earlier, IReadOnlyList<double> later, ConfidenceLevel level)
    {
        var (before, after) = (Numbers.Of(earlier, 0), Numbers.Of(later, 0));
        Numbers.SameLength(before, after, nameof(earlier), nameof(later));
        return Fit([.. after.Zip(before, (end, start) => end - start)], level);
    }

    /// <summary>Estimate, interval and p.</summary>
    public override string ToString() =>
        FormattableString.Invariant($"Hodges-Lehmann {HodgesLehmann:G5}") + (Interval is { } interval ? $", {interval}" : "") + FormattableString.Invariant($", {(IsExact ? "exact p" : "p")} {PValue:G3}");

    private static double[] WalshAverages(double[] d)
    {
        var averages = new List<double>(d.Length * (d.Length + 1) / 2);
        for (var i = 0; i < d.Length; i++)
        {
            for (var j = i; j < d.Length; j++) averages.Add(d[i] / 2 + d[j] / 2);
        }

        averages.Sort();
        return [.. averages];
    }

    private static SignedRankTest Exact(SignedRankTest test, double[] d, int[] doubled, int doubledV, ConfidenceLevel level)
    {
        var exact = SumDistribution.OfCoinFlips(doubled);
        var walsh = WalshAverages(d);
        var (lower, upper, achieved) = Limits(walsh, d.Length, level);
        return test with
        {
            IsExact = true,
            PValueGreater = exact.AtLeast(doubledV),
            PValueLess = exact.AtMost(doubledV),
            HodgesLehmann = Descriptive.MedianOfSorted(walsh),
            Interval = achieved is null ? null : new Interval(lower, upper, level),
            AchievedConfidence = achieved,
        };
    }

    /// <summary>Many differences: normal p-values with continuity correction, order statistics by selection.</summary>
    private static SignedRankTest Large(SignedRankTest test, double[] d, double deviation, double spread, ConfidenceLevel level)
    {
        var sorted = Numbers.Sorted(d);
        double n = d.Length, all = n * (n + 1) / 2;
        var untied = Math.Sqrt(Variance(n, []));
        var k = Math.Max(1, (long)Math.Ceiling(all / 2 - NormalDistribution.UpperQuantile(level.Alpha / 2) * untied - 0.5));
        var middle = (long)all;
        return test with
        {
            PValueGreater = NormalDistribution.UpperTail((deviation - 0.5) / spread),
            PValueLess = NormalDistribution.Cdf((deviation + 0.5) / spread),
            HodgesLehmann = (WalshSelection.AtRank(sorted, (middle + 1) / 2) + WalshSelection.AtRank(sorted, (middle + 2) / 2)) / 2,
            Interval = new Interval(WalshSelection.AtRank(sorted, k), WalshSelection.AtRank(sorted, middle + 1 - k), level),
            AchievedConfidence = 1 - 2 * NormalDistribution.Cdf((k - 0.5 - all / 2) / untied),
        };
    }

    private static (double Lower, double Upper, double? Achieved) Limits(double[] walsh, int observations, ConfidenceLevel level)
    {
        var k = SignedRankDistribution.Quantile(level.Alpha / 2, observations);
        if (k == 0) return (0, 0, null);
        return (walsh[k - 1], walsh[^k], 1 - 2 * SignedRankDistribution.Cdf(k - 1, observations));
    }

    private static double Variance(double n, int[] ties) => n * (n + 1) * (2 * n + 1) / 24 - ties.Sum(tie => (double)tie * tie * tie - tie) / 48;
}
