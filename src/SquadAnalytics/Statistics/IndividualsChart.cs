namespace SquadAnalytics.Statistics;

/// <summary>Limits of an individuals chart: mean ± 3 σ̂, with σ̂ from the moving ranges of a stable baseline.</summary>
/// <param name="Centre">Mean of the baseline.</param>
/// <param name="MeanMovingRange">Mean of |y_i - y_(i-1)|.</param>
/// <param name="Sigma">σ̂ = mean moving range / 1.128 (or 2/√π).</param>
/// <remarks>In the unit of the series. Assumes a stable, near enough normal baseline. Moving ranges ignore slow drifts, so the limits show what is odd from one test to the next. Not for a series with a trend. Shewhart (1931), Economic control of quality of manufactured product (from memory).</remarks>
public sealed record IndividualsChart(double Centre, double MeanMovingRange, double Sigma)
{
    private const double Width = 3;
    private const double RangeFactor = 3.267;

    /// <summary>Lower limit, centre - 3 σ̂.</summary>
    public double Lower => Centre - Width * Sigma;

    /// <summary>Upper limit, centre + 3 σ̂.</summary>
    public double Upper => Centre + Width * Sigma;

    /// <summary>Upper limit of a single moving range, 3.267 times their mean.</summary>
    public double MovingRangeUpper => RangeFactor * MeanMovingRange;

    /// <summary>Positions, counted from 0, of values outside the limits.</summary>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public IReadOnlyList<int> Beyond(IReadOnlyList<double> values) => Positions(Numbers.Of(values, 0), value => value < Lower || value > Upper);

    /// <summary>Sets limits from a baseline in time order without gaps.</summary>
    /// <remarks>Assumes independent normal values about a constant level.</remarks>
    /// <returns>The limits, or <see cref="Refusal.TooFewObservations"/> below two values, or <see cref="Refusal.ZeroVariance"/> without any change.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<IndividualsChart> Fit(IReadOnlyList<double> baseline, MovingRangeDivisor divisor = MovingRangeDivisor.Tabulated)
    {
        var y = Numbers.Of(baseline, 0);
        return FromRanges(y, [.. y.Skip(1).Select((value, i) => Math.Abs(value - y[i]))], divisor);
    }

    /// <summary>Sets limits from a baseline and those of its moving ranges that do not span a gap.</summary>
    /// <returns>The limits, or <see cref="Refusal.TooFewObservations"/> below two values or without a moving range, or <see cref="Refusal.ZeroVariance"/> where all moving ranges are 0.</returns>
    /// <exception cref="ArgumentException">A number is not finite, or a moving range is below 0.</exception>
    public static Answer<IndividualsChart> FromRanges(IReadOnlyList<double> baseline, IReadOnlyList<double> movingRanges, MovingRangeDivisor divisor = MovingRangeDivisor.Tabulated)
    {
        var (y, ranges) = (Numbers.Of(baseline, 0), Numbers.Of(movingRanges, 0));
        if (ranges.Any(range => range < 0)) throw new ArgumentException("A moving range is 0 or more.", nameof(movingRanges));
        if (y.Length < 2 || ranges.Length < 1) return new NotEstimable("the control limits", Refusal.TooFewObservations, 2, Math.Min(y.Length, ranges.Length + 1), "values without a gap");
        var mean = Descriptive.MeanOf(ranges);
        if (mean == 0) return new NotEstimable("the control limits", Refusal.ZeroVariance, "values that change", "none");
        return new IndividualsChart(Descriptive.MeanOf(y), mean, mean / (divisor == MovingRangeDivisor.Exact ? 2 / Math.Sqrt(Math.PI) : 1.128));
    }

    /// <summary>Centre and limits.</summary>
    public override string ToString() => FormattableString.Invariant($"centre {Centre:G6}, limits {Lower:G6} to {Upper:G6}");

    internal static int[] Positions(double[] values, Func<double, bool> isOut) => [.. Enumerable.Range(0, values.Length).Where(i => isOut(values[i]))];
}
