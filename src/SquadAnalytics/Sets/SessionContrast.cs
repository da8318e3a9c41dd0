namespace SquadAnalytics.Sets;

/// <summary>The contrasts of one session: what it contributes to the test over sessions.</summary>
/// <param name="SessionId">The session.</param>
/// <param name="Date">Its date, to look for a drift over time.</param>
/// <param name="LateContrast">Mean of the later sets minus mean of the earlier ones, in seconds or percent.</param>
/// <param name="KinkContrast">The part of it that a steady drift does not explain, in seconds or percent.</param>
public sealed record SessionContrast(string SessionId, DateOnly Date, Estimate LateContrast, Estimate KinkContrast);
