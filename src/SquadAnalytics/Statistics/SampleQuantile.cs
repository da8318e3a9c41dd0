namespace SquadAnalytics.Statistics;

/// <summary>The nine quantile rules of Hyndman &amp; Fan (1996), Am Stat 50:361-365 (from memory; checked against R 4.2.2).</summary>
internal static class SampleQuantile
{
    // A position this close to a whole number is that number: n·p of 20·0.15 is not exactly 3.
    private const double Fuzz = 4 * 2.220446049250313e-16;

    /// <summary>The quantile of numbers in ascending order.</summary>
    public static double OfSorted(ReadOnlySpan<double> sorted, double probability, QuantileRule rule)
    {
        if (!(probability >= 0 && probability <= 1))
            throw new ArgumentOutOfRangeException(nameof(probability), probability, "A quantile's probability lies between 0 and 1.");
        var n = sorted.Length;
        var position = rule switch
        {
            QuantileRule.EmpiricalInverse or QuantileRule.EmpiricalInverseAveraged => n * probability,
            QuantileRule.NearestEven => n * probability - 0.5,
            QuantileRule.EmpiricalLinear => Linear(n, probability, 0, 1),
            QuantileRule.Midpoint => Linear(n, probability, 0.5, 0.5),
            QuantileRule.MeanPosition => Linear(n, probability, 0, 0),
            QuantileRule.ModePosition => Linear(n, probability, 1, 1),
            QuantileRule.MedianUnbiased => Linear(n, probability, 1.0 / 3, 1.0 / 3),
            QuantileRule.NormalUnbiased => Linear(n, probability, 0.375, 0.375),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not one of the nine quantile rules."),
        };
        var below = (int)Math.Floor(position + Fuzz);
        var rest = position - below;
        if (Math.Abs(rest) < Fuzz * Math.Max(1, position)) rest = 0;
        var weight = rule switch
        {
            QuantileRule.EmpiricalInverse => rest > 0 ? 1 : 0,
            QuantileRule.EmpiricalInverseAveraged => rest > 0 ? 1 : 0.5,
            QuantileRule.NearestEven => rest != 0 || int.IsOddInteger(below) ? 1 : 0,
            _ => rest,
        };
        var (low, high) = (sorted[Math.Clamp(below - 1, 0, n - 1)], sorted[Math.Clamp(below, 0, n - 1)]);
        return weight == 1 ? high : low + weight * (high - low);
    }

    private static double Linear(int n, double probability, double a, double b) => a + probability * (n + 1 - a - b);
}
