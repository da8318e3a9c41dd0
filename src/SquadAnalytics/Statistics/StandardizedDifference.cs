namespace SquadAnalytics.Statistics;

/// <summary>A difference in units of a named standard deviation, with limits from the noncentral t distribution where there are exact ones.</summary>
/// <param name="Standardizer">The standard deviation by which the difference is divided, in words.</param>
/// <param name="Value">The standardised difference, a plain number.</param>
/// <param name="Interval">Its interval, or null where no exact one exists.</param>
public sealed record StandardizedDifference(string Standardizer, double Value, Interval? Interval)
{
    /// <summary>The difference, what it is divided by, and the interval.</summary>
    public override string ToString() =>
        FormattableString.Invariant($"{Value:0.00} {Standardizer}") + (Interval is { } interval ? $", {interval}" : "");

    internal StandardizedDifference Times(double factor) => this with
    {
        Value = factor * Value,
        Interval = Interval is { } interval ? new Interval(factor * interval.Lower, factor * interval.Upper, interval.ConfidenceLevel) : null,
    };

    // δ / scale, where t = scale × the effect has a noncentral t distribution with noncentrality scale × true effect.
    internal static StandardizedDifference Exact(string standardizer, double value, double scale, double degreesOfFreedom, ConfidenceLevel level)
    {
        double Limit(double probability) => NoncentralTDistribution.Noncentrality(scale * value, degreesOfFreedom, probability) / scale;
        return new StandardizedDifference(standardizer, value, new Interval(Limit(1 - level.Alpha / 2), Limit(level.Alpha / 2), level));
    }
}
