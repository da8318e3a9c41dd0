namespace SquadAnalytics.Storage;

/// <summary>One data row of an imported file that is not among the sessions: refused, or awaiting a decision. Its text is kept as written.</summary>
/// <param name="Id">Its id, unique in the logbook.</param>
/// <param name="State">Why it is held.</param>
/// <param name="File">Name of the source file.</param>
/// <param name="Sheet">Sheet of a workbook, or null.</param>
/// <param name="Line">Line or row number in the source, from 1.</param>
/// <param name="Cells">All cells of the row, in the order of the source.</param>
public sealed record HeldRow(string Id, HeldRowState State, string File, string? Sheet, long Line, IReadOnlyList<HeldCell> Cells)
{
    /// <summary>The reason that concerns the whole row, or null where single cells carry theirs.</summary>
    public string? Reason { get; init; }

    /// <summary>The id of the decision that the row awaits, or null.</summary>
    public string? DecisionId { get; init; }

    /// <summary>Name of the source's copy in the logbook's folder of imports, or null.</summary>
    public string? ImportCopy { get; init; }

    /// <summary>The bad cells, as problems that name file, sheet, line and column.</summary>
    public IReadOnlyList<CellProblem> Problems => [.. Cells.Where(cell => cell.Reason is not null).Select(cell => new CellProblem(File, Line, cell.Reason!, cell.Accepts ?? "see the reason")
    {
        Sheet = Sheet,
        Column = cell.Column,
        ColumnNumber = cell.ColumnNumber,
        Text = cell.Text,
    })];
}
