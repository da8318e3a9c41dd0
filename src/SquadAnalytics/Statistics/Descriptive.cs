using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Descriptive statistics of one sample, in the sample's own unit. Sums are compensated and deviations taken from the mean first.</summary>
/// <remarks>Assumes nothing: it describes. Source: textbook definitions; the quantile's rules stand with <see cref="QuantileRule"/>.</remarks>
public static class Descriptive
{
    /// <summary>Factor that makes the median absolute deviation of normal numbers estimate their SD, as R's <c>mad</c> has it.</summary>
    public const double NormalConsistency = 1.4826;

    /// <summary>Sum of the numbers, compensated for rounding.</summary>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static double Sum(IReadOnlyList<double> values) => CompensatedSum.Of(Numbers.Of(values, 0));

    /// <summary>Arithmetic mean.</summary>
    /// <exception cref="ArgumentException">There is no number, or one is not finite.</exception>
    public static double Mean(IReadOnlyList<double> values) => MeanOf(Numbers.Of(values));

    /// <summary>Variance with n - 1.</summary>
    /// <exception cref="ArgumentException">There are fewer than two numbers, or one is not finite.</exception>
    public static double Variance(IReadOnlyList<double> values)
    {
        var sample = Numbers.Of(values, 2);
        return SumOfSquares(sample) / (sample.Length - 1);
    }

    /// <summary>Standard deviation with n - 1.</summary>
    /// <exception cref="ArgumentException">There are fewer than two numbers, or one is not finite.</exception>
    public static double StandardDeviation(IReadOnlyList<double> values) => Math.Sqrt(Variance(values));

    /// <summary>Sample covariance with n - 1.</summary>
    /// <exception cref="ArgumentException">There are fewer than two pairs, the lengths differ, or a number is not finite.</exception>
    public static double Covariance(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var (first, second) = (Numbers.Of(x, 2), Numbers.Of(y, 2));
        Numbers.SameLength(first, second, nameof(x), nameof(y));
        return SumOfProducts(first, second) / (first.Length - 1);
    }

    /// <summary>Geometric mean exp(mean ln x) of numbers above 0.</summary>
    /// <exception cref="ArgumentException">There is no number, or one is not above 0.</exception>
    public static double GeometricMean(IReadOnlyList<double> values) =>
        Math.Exp(MeanOf([.. Numbers.Of(values).Select(value => Math.Log(Require.Positive(value)))]));

    /// <summary>Median: the middle number, or the mean of the two middle ones.</summary>
    /// <exception cref="ArgumentException">There is no number, or one is not finite.</exception>
    public static double Median(IReadOnlyList<double> values) => MedianOfSorted(Numbers.Sorted(Numbers.Of(values)));

    /// <summary>Median absolute deviation from the median, times <paramref name="scale"/> (default: estimates the SD of normal numbers).</summary>
    /// <exception cref="ArgumentException">There is no number, or one is not finite.</exception>
    public static double MedianAbsoluteDeviation(IReadOnlyList<double> values, double scale = NormalConsistency)
    {
        var sample = Numbers.Of(values);
        var median = Median(sample);
        return scale * Median([.. sample.Select(value => Math.Abs(value - median))]);
    }

    /// <summary>The quantile at <paramref name="probability"/> (0 to 1, ends included), read off by a named rule.</summary>
    /// <exception cref="ArgumentException">There is no number, one is not finite, or the probability is outside 0 to 1.</exception>
    public static double Quantile(IReadOnlyList<double> values, double probability, QuantileRule rule = QuantileRule.ModePosition) =>
        SampleQuantile.OfSorted(Numbers.Sorted(Numbers.Of(values)), probability, rule);

    /// <summary>Autocorrelation r_k = Σ (y_i - m)(y_(i+k) - m) / Σ (y_i - m)², or null where all numbers are equal.</summary>
    /// <exception cref="ArgumentException">There are not more numbers than the lag, or one is not finite.</exception>
    public static double? Autocorrelation(IReadOnlyList<double> values, int lag = 1)
    {
        Require.AtLeast(0, lag);
        var deviations = Deviations(Numbers.Of(values, lag + 1));
        var total = CompensatedSum.OfProducts(deviations, deviations);
        return total == 0 ? null : CompensatedSum.OfProducts(deviations.AsSpan(0, deviations.Length - lag), deviations.AsSpan(lag)) / total;
    }

    /// <summary>Skewness g1 = m3 / m2^1.5 from moments divided by n, or null where all numbers are equal.</summary>
    /// <exception cref="ArgumentException">There is no number, or one is not finite.</exception>
    public static double? Skewness(IReadOnlyList<double> values) => StandardizedMoment(Numbers.Of(values), 3);

    /// <summary>Excess kurtosis g2 = m4 / m2² - 3 from moments divided by n, or null where all numbers are equal.</summary>
    /// <exception cref="ArgumentException">There is no number, or one is not finite.</exception>
    public static double? ExcessKurtosis(IReadOnlyList<double> values) => StandardizedMoment(Numbers.Of(values), 4) - 3;

    /// <summary>Mean of a checked sample: one pass for the mean, one for what rounding left over.</summary>
    internal static double MeanOf(ReadOnlySpan<double> sample)
    {
        var mean = CompensatedSum.Of(sample) / sample.Length;
        var rest = new CompensatedSum();
        foreach (var value in sample) rest.Add(value - mean);
        return mean + rest.Value / sample.Length;
    }

    /// <summary>Σ (x - mean)².</summary>
    internal static double SumOfSquares(double[] sample) => SumOfProducts(sample, sample);

    /// <summary>Σ (x - mean x)(y - mean y).</summary>
    internal static double SumOfProducts(double[] x, double[] y)
    {
        var (dx, dy) = (Deviations(x), ReferenceEquals(x, y) ? null : Deviations(y));
        dy ??= dx;
        return CompensatedSum.OfProducts(dx, dy) - CompensatedSum.Of(dx) * CompensatedSum.Of(dy) / dx.Length;
    }

    /// <summary>Median of numbers in ascending order.</summary>
    internal static double MedianOfSorted(ReadOnlySpan<double> sorted)
    {
        var half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : sorted[half - 1] + (sorted[half] - sorted[half - 1]) / 2;
    }

    private static double[] Deviations(double[] sample)
    {
        var mean = MeanOf(sample);
        return Array.ConvertAll(sample, value => value - mean);
    }

    private static double? StandardizedMoment(double[] sample, int order)
    {
        var deviations = Deviations(sample);
        var second = MeanOf(Array.ConvertAll(deviations, deviation => deviation * deviation));
        return second == 0 ? null : MeanOf(Array.ConvertAll(deviations, deviation => Math.Pow(deviation, order))) / Math.Pow(second, order / 2.0);
    }
}
