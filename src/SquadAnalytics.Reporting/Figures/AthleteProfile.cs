namespace SquadAnalytics.Reporting.Figures;

/// <summary>One athlete's work times of one session or their means, for a small picture among others.</summary>
/// <param name="Label">The athlete as labelled in this report.</param>
/// <param name="Sets">Work time of each set; null where it was not timed.</param>
public sealed record AthleteProfile(string Label, IReadOnlyList<Seconds?> Sets);
