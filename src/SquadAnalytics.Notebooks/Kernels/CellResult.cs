namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>What became of one cell that was handed to a kernel.</summary>
/// <param name="Ending">How it ended.</param>
/// <param name="Outputs">What it put out, in order.</param>
/// <param name="Fault">What went wrong, or null.</param>
/// <param name="Duration">How long it ran.</param>
public sealed record CellResult(CellEnding Ending, IReadOnlyList<CellOutput> Outputs, CellFault? Fault, TimeSpan Duration);
