namespace SquadAnalytics.Import;

/// <summary>A row that was not kept, with every bad cell in it.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Cells">The row as written.</param>
/// <param name="Problems">What is wrong with it; one or more.</param>
public sealed record RefusedRow(RowPlace Place, IReadOnlyList<RowCell> Cells, IReadOnlyList<CellProblem> Problems)
{
    /// <summary>The problems, one sentence each.</summary>
    public override string ToString() => string.Join(' ', Problems);
}
