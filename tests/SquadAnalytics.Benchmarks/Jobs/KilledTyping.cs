namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>A draft as found after a kill.</summary>
/// <param name="Typed">Cells that had been left with the Enter key.</param>
/// <param name="Kept">Cells found.</param>
/// <param name="Fault">What was wrong, or null.</param>
internal sealed record KilledTyping(int Typed, int Kept, string? Fault);
