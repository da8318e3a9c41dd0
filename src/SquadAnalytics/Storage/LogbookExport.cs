namespace SquadAnalytics.Storage;

/// <summary>Something that was written from the logbook to a place outside its folder, where removing a person cannot reach it.</summary>
/// <param name="Id">Its id, unique in the logbook.</param>
/// <param name="At">When it was written.</param>
/// <param name="Kind">What it was, for example <c>backup</c> or <c>report</c>.</param>
/// <param name="Destination">Where it went.</param>
/// <param name="AthleteIds">The athletes in it; empty means the whole squad.</param>
public sealed record LogbookExport(string Id, DateTimeOffset At, string Kind, string Destination, IReadOnlyList<string> AthleteIds)
{
    /// <summary>Whether the export shows an athlete.</summary>
    public bool Shows(string athleteId) => AthleteIds.Count == 0 || AthleteIds.Contains(athleteId);
}
