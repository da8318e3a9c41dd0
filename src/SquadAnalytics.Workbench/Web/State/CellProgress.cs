using SquadAnalytics.Notebooks.Files;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>How it stands with a cell.</summary>
/// <param name="Outputs">What it put out since the notebook was opened; null where it was not run.</param>
/// <param name="Phase">Whether it has its turn.</param>
/// <param name="Took">How long it ran, or null.</param>
public sealed record CellProgress(CellOutputs? Outputs, CellPhase Phase, TimeSpan? Took)
{
    /// <summary>A cell that was not run since the notebook was opened.</summary>
    public static CellProgress None { get; } = new(null, CellPhase.Idle, null);
}
