namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>A logbook as found after a kill during an import.</summary>
/// <param name="IsKept">Whether the import was kept as a whole.</param>
/// <param name="Fault">What was wrong, or null.</param>
internal sealed record KilledImport(bool IsKept, string? Fault);
