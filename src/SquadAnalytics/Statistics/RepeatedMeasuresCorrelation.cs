namespace SquadAnalytics.Statistics;

/// <summary>Correlation of two measures within athletes, with one slope for all and an own level for each.</summary>
/// <param name="R">r, the sign of the slope times √(SS_x/(SS_x + SS_res)), SS_x what x explains of the sum of squares of y within athletes and SS_res the rest.</param>
/// <param name="Slope">The common slope of y on x within athletes.</param>
/// <param name="Athletes">Athletes with two or more observations.</param>
/// <param name="Observations">Their observations.</param>
/// <param name="WithoutTrends">Whether each athlete's own straight trend was taken out of both measures, too.</param>
/// <remarks>Analysis of covariance with an athlete factor (and its interaction with time where trends are taken out); assumes the same slope for all. Bakdash &amp; Marusich (2017), Front Psychol
/// 8:456.</remarks>
public sealed record RepeatedMeasuresCorrelation(double R, TEstimate Slope, int Athletes, int Observations, bool WithoutTrends = false)
{
    /// <summary>Degrees of freedom, observations - athletes - 1; observations - 2 athletes - 1 without trends.</summary>
    public int DegreesOfFreedom => Observations - (WithoutTrends ? 2 : 1) * Athletes - 1;

    /// <summary>Two-sided p-value of no association; null where y lies exactly on parallel lines.</summary>
    public double? PValue => Slope.PValue;

    /// <summary>Interval by Fisher's transformation with degrees of freedom - 1 in place of n - 3, or null where that is 0 or |r| is 1.</summary>
    public Interval? Interval(ConfidenceLevel level) => PearsonCorrelation.FisherInterval(R, DegreesOfFreedom - 1, level);

    /// <summary>Correlates two measures.</summary>
    /// <param name="athletes">The athlete of each observation; those with a single one are left out, as they say nothing within athletes.</param>
    /// <param name="x">First measure.</param>
    /// <param name="y">Second measure.</param>
    /// <param name="times">Times of the observations, to take each athlete's own straight trend out of both measures; null leaves trends in. Athletes with fewer than three times are then left out.</param>
    /// <returns>The correlation, or <see cref="Refusal.TooFewObservations"/> where no degree of freedom is left, or <see cref="Refusal.ZeroVariance"/> where a measure does not vary within athletes.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<RepeatedMeasuresCorrelation> Fit(IReadOnlyList<string> athletes, IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double>? times = null)
    {
        ArgumentNullException.ThrowIfNull(athletes);
        var (first, second) = (Numbers.Of(x, 0), Numbers.Of(y, 0));
        Numbers.SameLength(first, second, nameof(x), nameof(y));
        if (athletes.Count != first.Length)
            throw new ArgumentException(FormattableString.Invariant($"athletes must be as long as x: {athletes.Count} against {first.Length}."), nameof(athletes));
        double[]? at = times is null ? null : Numbers.Of(times, 0);
        if (at is not null) Numbers.SameLength(first, at, nameof(x), nameof(times));
        int[][] groups =
        [
            .. Enumerable.Range(0, first.Length).GroupBy(i => athletes[i], StringComparer.Ordinal).Select(group => group.ToArray())
                .Where(group => at is null ? group.Length > 1 : group.Select(i => at[i]).Distinct().Count() > 2),
        ];
        double[] Centred(double[] values) => [.. groups.SelectMany(group => Centre(group, values, at))];
        var (dx, dy) = (Centred(first), Centred(second));
        var lost = (at is null ? 1 : 2) * groups.Length;
        var df = dx.Length - lost - 1;
        if (df < 1) return new NotEstimable("the correlation within athletes", Refusal.TooFewObservations, lost + 2, dx.Length, "repeated observations");
        var (xx, yy, xy) = (CompensatedSum.OfProducts(dx, dx), CompensatedSum.OfProducts(dy, dy), CompensatedSum.OfProducts(dx, dy));
        if (IsNothing(xx, first) || IsNothing(yy, second)) return new NotEstimable("the correlation within athletes", Refusal.ZeroVariance, "two measures that vary within athletes", "one that does not");
        var slope = xy / xx;
        double[] residuals = [.. dy.Zip(dx, (response, at) => response - slope * at)];
        var error = Math.Sqrt(CompensatedSum.OfProducts(residuals, residuals) / df / xx);
        var r = Math.Clamp(xy / Math.Sqrt(xx) / Math.Sqrt(yy), -1, 1);
        return new RepeatedMeasuresCorrelation(r, new TEstimate("slope within athletes", slope, error, df), groups.Length, dx.Length, at is not null);
    }

    /// <summary>r, degrees of freedom and slope.</summary>
    public override string ToString() => FormattableString.Invariant($"r {R:0.000} within athletes, df {DegreesOfFreedom}, {Slope}");

    /// <summary>What is left of one athlete's values about their mean, or about their line on times.</summary>
    private static double[] Centre(int[] group, double[] values, double[]? times)
    {
        double[] own = [.. group.Select(i => values[i])];
        if (times is not null) return [.. LeastSquares.FitLine([.. group.Select(i => times[i])], own).GetOrThrow().Residuals];
        var mean = Descriptive.MeanOf(own);
        return Array.ConvertAll(own, value => value - mean);
    }

    /// <summary>Whether a sum of squares is rounding only: residuals of values that lie on their lines.</summary>
    private static bool IsNothing(double squares, double[] values) => squares <= 1e-26 * CompensatedSum.OfProducts(values, values);
}
