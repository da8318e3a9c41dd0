namespace SquadAnalytics.Storage;

/// <summary>One data row of an imported file that is not among the sessions: refused, or awaiting a decision. Its text is kept as written.</summary>
/// <param name="Id">Its id, unique in the logbook.</param>
/// <param name="State">Why it is held.</param>
/// <param name="File">Name of the source file.</param>
/// <param name="Sheet">Sheet of a workbook, or null.</param>
/// <param name="Line">Line or row number in the source, from 1.</param>
/// <param name="Cells">All cells of the row, in the order of the source.</param>
public sealed record HeldRow(string Id, HeldRowState State, string File, string? Sheet, int Line, IReadOnlyList<HeldCell> Cells)
{
    /// <summary>What is wrong with the row, cell by cell; of this row's file, sheet and line.</summary>
    public IReadOnlyList<CellProblem> Problems { get; init; } = [];

    /// <summary>Ids of the decisions that the row awaits.</summary>
    public IReadOnlyList<string> DecisionIds { get; init; } = [];

    /// <summary>Name of the source's copy in the logbook's folder of imports, or null.</summary>
    public string? ImportCopy { get; init; }
}
