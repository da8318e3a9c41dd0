namespace SquadAnalytics.SampleSquad;

/// <summary>From one set on the boxer is abruptly slower, and most of the loss lies at one station.</summary>
/// <param name="AfterSet">The last set before the break, b.</param>
/// <param name="Percent">How much slower every set after b is, in percent of the set time.</param>
/// <param name="Station">Name of the station that carries most of it.</param>
/// <param name="StationShare">The share of the loss at that station, 0 to 1; the rest is spread over the other stations.</param>
/// <param name="SpreadPercent">SD of the size of the break from session to session, in percent of the set time.</param>
public sealed record LateBreak(int AfterSet, double Percent, string Station, double StationShare, double SpreadPercent) : Story;
