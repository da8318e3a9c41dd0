namespace SquadAnalytics.SampleSquad;

/// <summary>The boxer goes off faster than can be kept up, more in some sessions than in others, and pays for it in every later set.</summary>
/// <param name="MeanPercent">How much faster than sustainable the first set is on average, in percent; positive.</param>
/// <param name="SpreadPercent">SD of that from session to session, in percent.</param>
/// <param name="Payback">How many percent slower each later set is, for every percent that the first set was too fast.</param>
public sealed record FastStart(double MeanPercent, double SpreadPercent, double Payback) : Story;
