namespace SquadAnalytics.Statistics;

/// <summary>One group of a sample: how many observations, their mean, and their SD (n - 1), null for a single observation.</summary>
/// <param name="Name">Name of the group.</param>
/// <param name="Count">Observations in the group.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="StandardDeviation">Their SD, or null.</param>
public sealed record GroupSummary(string Name, int Count, double Mean, double? StandardDeviation);
