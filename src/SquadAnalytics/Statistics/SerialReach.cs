namespace SquadAnalytics.Statistics;

/// <summary>How a Newey-West standard error becomes an interval in a short series.</summary>
/// <param name="Inflation">Factor on the standard error.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the t distribution.</param>
internal readonly record struct SerialReach(double Inflation, double DegreesOfFreedom);
