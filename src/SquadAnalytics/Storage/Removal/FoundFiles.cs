namespace SquadAnalytics.Storage.Removal;

/// <summary>What a search for an athlete found, as paths within the logbook folder.</summary>
internal sealed record FoundFiles(IReadOnlyList<string> Mentioning, IReadOnlyList<string> Unsearched);
