namespace SquadAnalytics;

/// <summary>A health note. Kept in a file of its own, out of reports and exports by default.</summary>
/// <param name="Id">Its id, unique in the logbook.</param>
/// <param name="AthleteId">The athlete's id.</param>
/// <param name="Date">The day.</param>
/// <param name="Text">The note.</param>
public sealed record HealthNote(string Id, string AthleteId, DateOnly Date, string Text);
