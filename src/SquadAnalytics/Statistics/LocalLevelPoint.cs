namespace SquadAnalytics.Statistics;

/// <summary>The level of a series at one time, in its unit: from what came before and then, and from the whole series.</summary>
/// <param name="Filtered">Level given the observations up to this time.</param>
/// <param name="FilteredStandardError">Its standard error, with the variances taken as known.</param>
/// <param name="Smoothed">Level given all observations.</param>
/// <param name="SmoothedStandardError">Its standard error, with the variances taken as known.</param>
internal sealed record LocalLevelPoint(double Filtered, double FilteredStandardError, double Smoothed, double SmoothedStandardError);
