namespace SquadAnalytics.SampleSquad;

/// <summary>What a session would have been without the day's form and context, set noise and rounding.</summary>
/// <param name="SessionId">The session's id.</param>
/// <param name="ExpectedTotal">Level, learning, trend, block, pacing and break together.</param>
public sealed record SessionTruth(string SessionId, Seconds ExpectedTotal);
