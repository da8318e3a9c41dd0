using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Parameters;
using SquadAnalytics.Reporting;

namespace SquadAnalytics.Notebooks.Running;

/// <summary>A finished run of a notebook: what each cell put out, what was found, and what is needed to run it again.</summary>
/// <param name="Name">The notebook's name.</param>
/// <param name="Notebook">The notebook with the values that were chosen for its parameters.</param>
/// <param name="Cells">Its code cells in order.</param>
public sealed record NotebookRun(string Name, Notebook Notebook, IReadOnlyList<CellRun> Cells)
{
    /// <summary>The parameters with the values that were used.</summary>
    public IReadOnlyList<NotebookParameter> Parameters { get; init; } = [];

    /// <summary>What was found, in the order in which it was displayed.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>SHA-256 of the logbook's data, in hexadecimal, or null without a logbook.</summary>
    public string? DataFingerprint { get; init; }

    /// <summary>The logbook's folder, or null where there was none.</summary>
    public string? LogbookFolder { get; init; }

    /// <summary>A line that says that the data are invented, or null.</summary>
    public string? DataNote { get; init; }

    /// <summary>What the notebook ran on, or null where its process never became ready.</summary>
    public KernelIdentity? Identity { get; init; }

    /// <summary>When the run began.</summary>
    public DateTimeOffset Started { get; init; }

    /// <summary>How long it took.</summary>
    public TimeSpan Duration { get; init; }

    /// <summary>What kept the notebook from running at all, or null.</summary>
    public string? Obstacle { get; init; }

    /// <summary>The cell at which the run stopped, or null.</summary>
    public CellRun? Failure => Cells.FirstOrDefault(static cell => cell.Failed);

    /// <summary>Whether every cell ran to its end, and at least one did.</summary>
    public bool Succeeded => Obstacle is null && Failure is null;

    /// <summary>Why the run did not succeed, or null where it did.</summary>
    public string? Problem => Obstacle ?? (Failure is { } failed ? $"{failed.Place()} ({failed.Cell.Name()}): {failed.Result.Fault?.Message}" : null);
}
