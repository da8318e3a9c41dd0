using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Tests whether a straight line bends somewhere, without naming where.</summary>
/// <remarks>
/// The knot exists only if there is a bend, so an ordinary F test of the bend is not valid; these are. Both assume independent normal errors of
/// equal variance about the line.
/// </remarks>
public static class SlopeChange
{
    private const int MinimumPoints = 2;

    /// <summary>Davies' test: the largest |t| of a bend over a row of knots, with an upper bound of its p-value.</summary>
    /// <remarks>
    /// With t_j the t of the bend at knot j, df = n - 3 and M = max|t_j|: p ≤ 2[P(T &gt; M) + V (1-u)^((df-1)/2) Γ((df+1)/2)/(2√π Γ(df/2))],
    /// u = M²/(df + M²), V = Σ|asin√b_(j+1) - asin√b_j|, b_j = t_j²/(t_j² + df). The knots are spaced evenly from the second to the last but one x.
    /// Source: Davies (2002), Biometrika 89:484-489; Muggeo (2008), R News 8/1:20-25 (both from memory).
    /// </remarks>
    /// <param name="x">Explanatory values.</param>
    /// <param name="y">Responses.</param>
    /// <param name="points">How many knots to look at; 10 by default.</param>
    /// <returns>The test, or <see cref="Refusal.TooFewObservations"/> below five observations or four different x, or <see cref="Refusal.ZeroVariance"/> where the line fits perfectly.</returns>
    /// <exception cref="ArgumentException">The lists differ in length, a number is not finite, or fewer than two points.</exception>
    public static Answer<BreakTest> Davies(IReadOnlyList<double> x, IReadOnlyList<double> y, int points = 10)
    {
        Require.AtLeast(MinimumPoints, points);
        if (Refused("Davies' test", x, y) is { } refusal) return refusal;
        var sorted = Numbers.Sorted(Numbers.Of(x));
        var n = sorted.Length;
        var df = n - 3;
        double largest = 0, variation = 0, place = double.NaN;
        double? previous = null;
        foreach (var knot in Spaced(sorted[1], sorted[^2], points))
        {
            var fit = LeastSquares.Fit(y, RegressionDesign.WithIntercept(n).Add("x", x).Add("bend", [.. x.Select(value => Math.Max(0, value - knot))])).GetOrThrow();
            if (fit.AliasedColumns.Count > 0) continue;
            var bend = fit.Coefficient("bend");
            if (bend.T is not { } t) return new NotEstimable("Davies' test", Refusal.ZeroVariance, "observations that scatter about the line", "a perfect fit");
            var angle = Math.Asin(Math.Sqrt(t * t / (t * t + df)));
            if (previous is { } before) variation += Math.Abs(angle - before);
            previous = angle;
            if (Math.Abs(t) > largest) (largest, place) = (Math.Abs(t), knot);
        }

        var share = largest * largest / (df + largest * largest);
        var correction = variation * Math.Exp((df - 1) / 2.0 * Math.Log(1 - share) + GammaFunction.Log((df + 1) / 2.0) - GammaFunction.Log(df / 2.0)) / (2 * Math.Sqrt(Math.PI));
        var p = Math.Min(1, 2 * (StudentTDistribution.UpperTail(largest, df) + correction));
        return new BreakTest("Davies' test of a bend, largest |t|, p an upper bound", largest, p, place);
    }

    /// <summary>The score test: the residuals of the straight line against the bend averaged over a row of knots.</summary>
    /// <remarks>
    /// s = φ̄'e/(σ√(φ̄'(I - H)φ̄)), e and σ from the straight line, φ̄_i the mean over knots of max(0, x_i - k), t with n - 2 df. The knots are spaced evenly
    /// over the range of x. Source: Muggeo (2016), J Stat Comput Simul 86:3059-3067 (from memory).
    /// </remarks>
    /// <param name="x">Explanatory values.</param>
    /// <param name="y">Responses.</param>
    /// <param name="points">How many knots to average over; 10 by default.</param>
    /// <returns>The test, or <see cref="Refusal.TooFewObservations"/> below five observations or four different x, or <see cref="Refusal.ZeroVariance"/> where the line fits perfectly.</returns>
    /// <exception cref="ArgumentException">The lists differ in length, a number is not finite, or fewer than two points.</exception>
    public static Answer<BreakTest> Score(IReadOnlyList<double> x, IReadOnlyList<double> y, int points = 10)
    {
        Require.AtLeast(MinimumPoints, points);
        if (Refused("the score test", x, y) is { } refusal) return refusal;
        var sorted = Numbers.Sorted(Numbers.Of(x));
        var knots = Spaced(sorted[0], sorted[^1], points).ToArray();
        var bend = x.Select(value => knots.Average(knot => Math.Max(0, value - knot))).ToArray();
        var line = LeastSquares.FitLine(x, y).GetOrThrow();
        if (line.ResidualStandardDeviation == 0) return new NotEstimable("the score test", Refusal.ZeroVariance, "observations that scatter about the line", "a perfect fit");
        var rest = LeastSquares.FitLine(x, bend).GetOrThrow();
        var score = CompensatedSum.OfProducts(rest.Residuals.ToArray(), line.Residuals.ToArray()) / (line.ResidualStandardDeviation * Math.Sqrt(rest.ResidualSumOfSquares));
        return new BreakTest("score test of a bend, averaged over knots", score, StudentTDistribution.TwoSidedPValue(score, line.DegreesOfFreedom), null);
    }

    private static NotEstimable? Refused(string measure, IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        double[] first = Numbers.Of(x), second = Numbers.Of(y);
        Numbers.SameLength(first, second, nameof(x), nameof(y));
        if (first.Length < 5) return new NotEstimable(measure, Refusal.TooFewObservations, 5, first.Length, "observations");
        var distinct = first.Distinct().Count();
        return distinct < 4 ? new NotEstimable(measure, Refusal.TooFewObservations, 4, distinct, "different x") : null;
    }

    private static IEnumerable<double> Spaced(double first, double last, int points) =>
        Enumerable.Range(0, points).Select(k => first + (last - first) * k / (points - 1));
}
