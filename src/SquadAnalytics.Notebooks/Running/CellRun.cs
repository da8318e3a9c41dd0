using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Running;

/// <summary>One code cell of a run.</summary>
/// <param name="Number">Its number among the notebook's code cells, from 1.</param>
/// <param name="Cell">The cell as it ran.</param>
/// <param name="Result">What became of it.</param>
public sealed record CellRun(int Number, NotebookCell Cell, CellResult Result)
{
    /// <summary>Whether the cell was handed to a kernel.</summary>
    public bool WasExecuted => Result.Ending is not (CellEnding.Skipped or CellEnding.NotRun);

    /// <summary>Whether the cell ended in any other way than it should.</summary>
    public bool Failed => WasExecuted && Result.Ending != CellEnding.Completed;

    /// <summary>Where it went wrong: <c>cell 4, line 2</c>.</summary>
    public string Place() => Result.Fault?.Line is { } line
        ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"cell {Number}, line {line}")
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"cell {Number}");
}
