namespace SquadAnalytics.Change;

/// <summary>An athlete whom a comparison of blocks leaves out.</summary>
/// <param name="AthleteId">The athlete's id.</param>
/// <param name="FirstTests">Eligible tests in the first block.</param>
/// <param name="SecondTests">Eligible tests in the second block.</param>
/// <param name="MeanSeconds">Mean session total of the tests there are.</param>
/// <param name="Reason">Why, in words.</param>
public sealed record LeftOutAthlete(string AthleteId, int FirstTests, int SecondTests, double MeanSeconds, string Reason);
