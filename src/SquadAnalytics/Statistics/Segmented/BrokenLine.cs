using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Continuous lines with one bend: from which x on does the slope change?</summary>
/// <remarks>
/// y = b₀ + b₁x + d·max(0, x - k) + e (hinge), b₁ = 0 for a plateau. The knot k is searched exhaustively between the second and the last but one
/// x (plateau: between the first and the last but one), which finds the smallest sum of squares whatever its shape. Standard errors are those of
/// nonlinear least squares, columns 1, x, max(0, x - k), -d·[x &gt; k]; limits t on n - 4 df (plateau n - 3); the profile of the knot holds all k with
/// RSS(k) ≤ RSS(1 + q_F(level; 1, df)/df). They assume a real bend well inside the data: test for it first (<see cref="SlopeChange"/>), for the estimated knot of a straight line means nothing. Assumes independent errors of
/// equal variance. Time grows with the observations times the different x: at most 2,000 of these. Sources: Hudson (1966), J Am Stat Assoc 61:1097-1129; Muggeo (2003), Stat Med 22:3055-3071 (both from memory).
/// </remarks>
public static class BrokenLine
{
    private const string Measure = "the bent line";
    private const int MostPlaces = 2_000;

    /// <summary>Searches for the knot.</summary>
    /// <param name="x">Explanatory values, for example set numbers; repeats are allowed.</param>
    /// <param name="y">Responses.</param>
    /// <param name="options">Settings; by default a hinge with 90 % intervals.</param>
    /// <returns>
    /// The fit, or <see cref="NotEstimable"/> with fewer than four different x, three for a plateau (<see cref="Refusal.TooFewObservations"/>), more than 2,000
    /// (<see cref="Refusal.TooManyObservations"/>), or a response that does not vary (<see cref="Refusal.ZeroVariance"/>).
    /// </returns>
    /// <exception cref="ArgumentException">The lists differ in length, or a number is not finite.</exception>
    public static Answer<BrokenLineFit> Fit(IReadOnlyList<double> x, IReadOnlyList<double> y, BrokenLineOptions? options = null)
    {
        options ??= new BrokenLineOptions();
        var (sorted, response) = Sorted(x, y);
        if (Refused(sorted, response, options.Shape, options.Shape == BrokenLineShape.Hinge ? 4 : 3) is { } refusal) return refusal;
        var (knot, rss, interior) = new BrokenLineSearch(sorted, response, options.Shape).Best();
        return Describe(sorted, response, knot, rss, interior, searched: true, options);
    }

    /// <summary>Fits the line with its knot at a place named in advance, for example a set number.</summary>
    /// <param name="x">Explanatory values; repeats are allowed.</param>
    /// <param name="y">Responses.</param>
    /// <param name="knot">The knot, inside the range of x.</param>
    /// <param name="options">Settings; by default a hinge with 90 % intervals.</param>
    /// <returns>The fit, or <see cref="Refusal.TooFewObservations"/> below three different x or, for a hinge, four observations, or what else <see cref="Fit"/> refuses.</returns>
    /// <exception cref="ArgumentException">The lists differ in length, a number is not finite, or the knot is outside the data.</exception>
    public static Answer<BrokenLineFit> FitAt(IReadOnlyList<double> x, IReadOnlyList<double> y, double knot, BrokenLineOptions? options = null)
    {
        options ??= new BrokenLineOptions();
        var (sorted, response) = Sorted(x, y);
        if (Refused(sorted, response, options.Shape, 3) is { } refusal) return refusal;
        var inside = options.Shape == BrokenLineShape.Hinge ? knot > sorted[0] && knot < sorted[^1] : knot >= sorted[0] && knot < sorted[^1];
        if (!inside)
        {
            throw new ArgumentOutOfRangeException(
                nameof(knot), knot, string.Create(CultureInfo.InvariantCulture, $"The knot must lie between {sorted[0]} and {sorted[^1]}, where the data are."));
        }

        return Describe(sorted, response, knot, null, interior: false, searched: false, options);
    }

    private static NotEstimable? Refused(double[] x, double[] y, BrokenLineShape shape, int needed)
    {
        var distinct = x.Distinct().Count();
        if (distinct < needed) return new NotEstimable(Measure, Refusal.TooFewObservations, needed, distinct, "different x");
        if (distinct > MostPlaces) return NotEstimable.TooMany(Measure, MostPlaces, distinct, "different x");
        var parameters = shape == BrokenLineShape.Hinge ? 3 : 2;
        if (x.Length <= parameters) return new NotEstimable(Measure, Refusal.TooFewObservations, parameters + 1, x.Length, "observations");
        return y.All(value => value == y[0]) ? new NotEstimable(Measure, Refusal.ZeroVariance, "a response that varies", "equal values") : null;
    }

    private static (double[] X, double[] Y) Sorted(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        double[] first = [.. Numbers.Of(x)], second = [.. Numbers.Of(y)];
        Numbers.SameLength(first, second, nameof(x), nameof(y));
        Array.Sort(first, second);
        return (first, second);
    }

    private static Answer<BrokenLineFit> Describe(double[] x, double[] y, double knot, double? searchedRss, bool interior, bool searched, BrokenLineOptions options)
    {
        var n = x.Length;
        var hinge = options.Shape == BrokenLineShape.Hinge;
        var bend = x.Select(value => Math.Max(0, value - knot)).ToArray();
        var design = RegressionDesign.WithIntercept(n);
        if (hinge) design = design.Add("x", x);
        if (!LeastSquares.Fit(y, design.Add("bend", bend)).TryGet(out var line))
            return new NotEstimable(Measure, Refusal.TooFewObservations, design.ColumnNames.Count + 2, n, "observations");
        var change = line.Coefficient("bend").Value;
        var rss = Math.Min(searchedRss ?? double.PositiveInfinity, line.ResidualSumOfSquares);
        var parameters = design.ColumnNames.Count + 1 + (searched ? 1 : 0);
        var df = n - parameters;
        var notes = new List<string>();
        if (searched && !interior) notes.Add("The best knot lies on an observation, where the sum of squares has a corner: no standard error of the knot.");
        if (df < 1) notes.Add("No residual degrees of freedom: no standard errors.");

        Interval? profile = null;
        if (searched && df >= 1)
        {
            var bound = rss * (1 + FDistribution.Quantile(options.ConfidenceLevel.Fraction, 1, df) / df) + 1e-12 * rss;
            var (lower, upper, open) = new BrokenLineSearch(x, y, options.Shape).Within(bound);
            profile = new Interval(Math.Min(lower, knot), Math.Max(upper, knot), options.ConfidenceLevel);
            if (open) notes.Add("The profile of the knot reaches the edge of the search: the data hardly say where the line bends, or whether it does.");
        }

        // The knot's own column makes the other standard errors honest about the search; on a corner it has none.
        var full = searched && interior && df >= 1
            ? LeastSquares.Fit(y, design.Add("bend", bend).Add("knot", [.. x.Select(value => value > knot ? -change : 0.0)])).GetOrThrow()
            : line;
        var sigma = df >= 1 ? Math.Sqrt(rss / df) : (double?)null;
        var method = searched ? "bent line, knot searched" : "bent line, knot named in advance";
        Estimate Of(double value, Unit unit, params ReadOnlySpan<(string Column, double Weight)> weights)
        {
            if (sigma is not { } s || full.ResidualStandardDeviation == 0 || weights.IsEmpty) return new Estimate(value, unit, n, method);
            var row = new double[full.ColumnNames.Count];
            foreach (var (column, weight) in weights) row[full.ColumnNames.ToList().IndexOf(column)] = weight;
            if (!full.Contrast(method, row).TryGet(out var contrast)) return new Estimate(value, unit, n, method);
            var error = contrast.StandardError / full.ResidualStandardDeviation * s;
            var reach = StudentTDistribution.TwoSidedFactor(options.ConfidenceLevel, df) * error;
            return new Estimate(value, unit, n, method)
            {
                StandardError = error,
                DegreesOfFreedom = df,
                Interval = new Interval(value - reach, value + reach, options.ConfidenceLevel),
                PValue = error > 0 ? StudentTDistribution.TwoSidedPValue(value / error, df) : null,
            };
        }

        var before = hinge ? line.Coefficient("x").Value : 0;
        var intercept = line.Coefficient(RegressionDesign.Intercept).Value;
        return new BrokenLineFit
        {
            Shape = options.Shape,
            Knot = (searched && interior && full != line ? Of(knot, Unit.None, ("knot", 1)) : Of(knot, Unit.None)) with { PValue = null },
            KnotProfile = profile,
            Intercept = Of(intercept, options.ResponseUnit, (RegressionDesign.Intercept, 1)),
            SlopeBefore = hinge ? Of(before, options.SlopeUnit, ("x", 1)) : Of(0, options.SlopeUnit),
            SlopeAfter = hinge ? Of(before + change, options.SlopeUnit, ("x", 1), ("bend", 1)) : Of(change, options.SlopeUnit, ("bend", 1)),
            SlopeChange = Of(change, options.SlopeUnit, ("bend", 1)),
            ResidualSumOfSquares = rss,
            ResidualStandardDeviation = sigma,
            DegreesOfFreedom = df,
            Observations = n,
            Parameters = parameters + 1,
            Notes = notes,
        };
    }
}
