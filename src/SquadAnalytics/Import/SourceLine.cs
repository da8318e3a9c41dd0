namespace SquadAnalytics.Import;

/// <summary>One line of a text file, or one row of a sheet, that is not blank.</summary>
/// <param name="Number">Its number in the file or sheet, from 1.</param>
/// <param name="Cells">Its cells.</param>
internal sealed record SourceLine(int Number, IReadOnlyList<SourceCell> Cells)
{
    /// <summary>The cell in a column, from 0; blank beyond the end of the line.</summary>
    public SourceCell this[int column] => column < Cells.Count ? Cells[column] : new SourceCell("");

    /// <summary>The texts of its cells that are not blank.</summary>
    public IEnumerable<string> Texts => Cells.Where(cell => !cell.IsBlank).Select(cell => cell.Text.Trim());

    /// <summary>All its text, one space between the cells.</summary>
    public string Whole => string.Join(' ', Texts);

    public bool IsBlank => Cells.All(cell => cell.IsBlank);
}
