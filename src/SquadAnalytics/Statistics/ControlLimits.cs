namespace SquadAnalytics.Statistics;

/// <summary>Limits of a control chart at one time, in the series' unit; no confidence level belongs to them.</summary>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
public sealed record ControlLimits(double Lower, double Upper);
