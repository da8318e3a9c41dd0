using SquadAnalytics.Storage;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>A logbook as found after a kill: what opening did, and what was wrong, or null.</summary>
internal sealed record KilledState(RecoveryKind? Recovery, string? Fault);
