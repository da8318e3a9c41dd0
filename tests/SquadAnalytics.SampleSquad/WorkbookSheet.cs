namespace SquadAnalytics.SampleSquad;

/// <summary>One sheet of a workbook to be written.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Rows">Its rows from the first on; an empty one is left out.</param>
public sealed record WorkbookSheet(string Name, IReadOnlyList<IReadOnlyList<WorkbookCell>> Rows)
{
    /// <summary>Whether the sheet is hidden.</summary>
    public bool IsHidden { get; init; }

    /// <summary>Ranges of merged cells, for example <c>A2:A4</c>.</summary>
    public IReadOnlyList<string> Merged { get; init; } = [];
}
