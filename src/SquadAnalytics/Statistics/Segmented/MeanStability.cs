using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Tests whether the mean of a series shifts anywhere, without naming where.</summary>
/// <remarks>
/// F_i = (RSS₀ - RSS_i)/(RSS_i/(n-2)) for a break after observation i, over the places that leave a share τ of the observations on each side; cumulative sum
/// max_i |Σ_(j≤i) e_j|/(σ√n) of residuals about the mean, σ² = RSS₀/(n-1). Probabilities are for many observations: with b = √max F and
/// λ = ((1-τ)/τ)², P ≈ (b - 1/b)φ(b) ln λ + 4φ(b)/b; the mean F is a weighted sum of χ²₁ with the eigenvalues of the correlations
/// √(s(1-t)/(t(1-s))) as weights, evaluated by numerical inversion; the cumulative sum's is that of a Brownian bridge. Assumes
/// independent errors of equal variance. Sources: Andrews (1993), Econometrica 61:821-856; James, James and Siegmund (1987), Biometrika 74:71-83;
/// Imhof (1961), Biometrika 48:419-426; Ploberger and Krämer (1992), Econometrica 60:271-285 (all from memory).
/// </remarks>
public static class MeanStability
{
    private const string Measure = "the tests of a stable mean";
    private const int MostPlaces = 50;

    /// <summary>Tests a series.</summary>
    /// <param name="values">The series in order of time.</param>
    /// <param name="trim">Share of the observations left on each side, above 0 and below one half; 0.15 by default.</param>
    /// <returns>The tests, or <see cref="Refusal.TooFewObservations"/> below ten observations, or <see cref="Refusal.ZeroVariance"/> where the series does not vary within segments.</returns>
    /// <exception cref="ArgumentException">A number is not finite, or the share is out of range.</exception>
    public static Answer<MeanStabilityFit> Test(IReadOnlyList<double> values, double trim = 0.15)
    {
        if (Require.Positive(trim) >= 0.5) throw new ArgumentOutOfRangeException(nameof(trim), trim, "The share left on each side lies above 0 and below 0.5.");
        var series = Numbers.Of(values, 0);
        var n = series.Length;
        if (n < 10) return new NotEstimable(Measure, Refusal.TooFewObservations, 10, n, "observations");
        var total = MeanShifts.SumOfSquares(series);
        var first = Math.Max(1, (int)Math.Floor(trim * n + 1e-9));
        var sums = MeanShifts.OneBreakSumsOfSquares(series);
        double largest = double.NegativeInfinity, sum = 0;
        var place = 0;
        for (var after = first; after <= n - first; after++)
        {
            var rss = sums[after - 1];
            if (!(rss > 1e-20 * total) || total == 0) return new NotEstimable(Measure, Refusal.ZeroVariance, "observations that vary within segments", "none");
            var f = (total - rss) / (rss / (n - 2));
            sum += f;
            if (f > largest) (largest, place) = (f, after);
        }

        var average = sum / (n - 2 * first + 1);
        var lowest = first / (double)n;
        var (cusum, wandered) = CumulativeSum(series, total);
        return new MeanStabilityFit(
            new BreakTest("largest F of one break", largest, LargestPValue(largest, lowest), place),
            new BreakTest("mean F of one break", average, AveragePValue(average, first, n), null),
            new BreakTest("cumulative sum of residuals", cusum, BridgePValue(cusum), wandered));
    }

    private static (double Statistic, int Place) CumulativeSum(double[] series, double total)
    {
        var mean = Descriptive.Mean(series);
        double walk = 0, largest = 0;
        var place = 0;
        for (var i = 0; i < series.Length; i++)
        {
            walk += series[i] - mean;
            if (Math.Abs(walk) > largest) (largest, place) = (Math.Abs(walk), i + 1);
        }

        return (largest / Math.Sqrt(total / (series.Length - 1) * series.Length), place);
    }

    private static double LargestPValue(double largest, double lowest)
    {
        // Below 1 the expansion for large values has no meaning; the probability is then near 1.
        if (largest <= 1) return 1;
        var b = Math.Sqrt(largest);
        var span = 2 * Math.Log((1 - lowest) / lowest);
        return Math.Min(1, NormalDistribution.Density(b) * ((b - 1 / b) * span + 4 / b));
    }

    private static double BridgePValue(double statistic)
    {
        // The series converges fast for large statistics; below 0.3 the probability differs from 1 by less than 1e-5.
        if (statistic < 0.3) return 1;
        var p = 0.0;
        for (var k = 1; k <= 100; k++)
        {
            var term = Math.Exp(-2.0 * k * k * statistic * statistic);
            p += k % 2 == 1 ? 2 * term : -2 * term;
            if (term < 1e-18 * p) break;
        }

        return Math.Clamp(p, 0, 1);
    }

    private static double AveragePValue(double average, int first, int n)
    {
        var count = Math.Min(MostPlaces, n - 2 * first + 1);
        var correlations = new double[count, count];
        double Share(int k) => (first + (n - 2.0 * first) * k / (count - 1)) / n;
        for (var i = 0; i < count; i++)
        {
            for (var j = i; j < count; j++)
            {
                var (s, t) = (Share(i), Share(j));
                correlations[i, j] = correlations[j, i] = Math.Sqrt(s * (1 - t) / (t * (1 - s)));
            }
        }

        return WeightedChiSquared.UpperTail([.. SymmetricEigen.Of(correlations).Values.Select(value => Math.Max(0, value) / count)], average);
    }
}
