namespace SquadAnalytics.Statistics;

/// <summary>Shapiro-Wilk test of normality: W is near 1 where ordered numbers lie on a straight line against normal scores.</summary>
/// <param name="W">The statistic, at most 1.</param>
/// <param name="PValue">P(W or less) for normal numbers, by Royston's approximation.</param>
/// <remarks>
/// W = (Σ a_i x_(i))² / Σ (x - x̄)², x_(i) the ordered numbers, a_i weights from normal scores of length 1. Royston (1995), algorithm AS R94, Appl Stat 44:547-551 (from memory; checked against R 4.2.2). With few numbers it misses all but gross
/// departures; a large p is no proof of normality.
/// </remarks>
public sealed record ShapiroWilk(double W, double PValue)
{
    private const int Least = 3;
    private const int Most = 5_000;

    /// <summary>Tests a sample.</summary>
    /// <remarks>Assumes independent values.</remarks>
    /// <returns>The test, or <see cref="Refusal.TooFewObservations"/> below 3 numbers, <see cref="Refusal.TooManyObservations"/> above 5,000, <see cref="Refusal.ZeroVariance"/> where all are equal.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<ShapiroWilk> Fit(IReadOnlyList<double> values)
    {
        var sample = Numbers.Of(values, 0);
        if (sample.Length < Least) return new NotEstimable("the Shapiro-Wilk test", Refusal.TooFewObservations, Least, sample.Length, "numbers");
        if (sample.Length > Most) return NotEstimable.TooMany("the Shapiro-Wilk test", Most, sample.Length, "numbers");
        var sorted = Numbers.Sorted(sample);
        if (sorted[0] == sorted[^1]) return new NotEstimable("the Shapiro-Wilk test", Refusal.ZeroVariance, "numbers that vary", "all the same");
        var weights = Weights(sorted.Length);
        var sum = new CompensatedSum();
        for (var i = 0; i < weights.Length; i++) sum.AddProduct(weights[i], sorted[^(i + 1)] - sorted[i]);
        var w = Math.Min(1, sum.Value * sum.Value / (2 * CompensatedSum.OfProducts(weights, weights) * Descriptive.SumOfSquares(sorted)));
        return new ShapiroWilk(w, Significance(w, sorted.Length));
    }

    // Weights of the upper half, largest first; the lower half has the same with opposite sign.
    private static double[] Weights(int n)
    {
        if (n == 3) return [Math.Sqrt(0.5)];
        double[] scores = [.. Enumerable.Range(1, n / 2).Select(i => -NormalDistribution.Quantile((i - 0.375) / (n + 0.25)))];
        var square = 2 * scores.Sum(score => score * score);
        var length = Math.Sqrt(square);
        var root = 1 / Math.Sqrt(n);
        double[] weights = [.. scores];
        weights[0] = scores[0] / length + Polynomial(root, 0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056);
        var polished = 1;
        if (n > 5)
        {
            weights[1] = scores[1] / length + Polynomial(root, 0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633);
            polished = 2;
        }

        var rest = square - 2 * scores.Take(polished).Sum(score => score * score);
        var share = 1 - 2 * weights.Take(polished).Sum(weight => weight * weight);
        var factor = Math.Sqrt(rest / share);
        for (var i = polished; i < weights.Length; i++) weights[i] = scores[i] / factor;
        return weights;
    }

    private static double Significance(double w, int n)
    {
        if (n == 3) return Math.Max(0, 6 / Math.PI * (Math.Asin(Math.Sqrt(w)) - Math.Asin(Math.Sqrt(0.75))));
        var y = Math.Log(1 - w);
        var logN = Math.Log(n);
        if (n > 11)
            return NormalDistribution.UpperTail((y - Polynomial(logN, -1.5861, -0.31082, -0.083751, 0.0038915)) / Math.Exp(Polynomial(logN, -0.4803, -0.082676, 0.0030302)));
        var gamma = Polynomial(n, -2.273, 0.459);
        if (y >= gamma) return 0;
        return NormalDistribution.UpperTail((-Math.Log(gamma - y) - Polynomial(n, 0.544, -0.39978, 0.025054, -6.714e-4)) / Math.Exp(Polynomial(n, 1.3822, -0.77857, 0.062767, -0.0020322)));
    }

    private static double Polynomial(double x, params ReadOnlySpan<double> coefficients)
    {
        double value = 0;
        for (var i = coefficients.Length - 1; i >= 0; i--) value = value * x + coefficients[i];
        return value;
    }
}
