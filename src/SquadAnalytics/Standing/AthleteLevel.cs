namespace SquadAnalytics.Standing;

/// <summary>An athlete's level, for example the mean of recent totals or a mixed model's prediction, with a standard error.</summary>
/// <param name="AthleteId">The athlete.</param>
/// <param name="Estimate">The level; smaller = faster. It needs a standard error.</param>
public sealed record AthleteLevel(string AthleteId, Estimate Estimate);
