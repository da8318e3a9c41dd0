namespace SquadAnalytics.Import;

/// <summary>Fetches refused and held rows as written, by reading their sheets once more: kept rows need no memory for their text.</summary>
internal static class RowTexts
{
    public static Dictionary<ParsedRow, SourceLine> Fetch(RawImport raw)
    {
        var texts = new Dictionary<ParsedRow, SourceLine>();
        foreach (var sheet in raw.Rows.Where(row => !row.IsKept).GroupBy(row => row.Block.Sheet, ReferenceEqualityComparer.Instance))
        {
            var wanted = sheet.ToDictionary(row => row.Line);
            foreach (var line in ((SourceSheet)sheet.Key!).Lines())
            {
                if (wanted.TryGetValue(line.Number, out var row)) texts[row] = line;
            }
        }

        return texts;
    }

    /// <summary>The cells of a row with their headers.</summary>
    public static IReadOnlyList<RowCell> Cells(ParsedRow row, SourceLine line) =>
        [.. line.Cells.Select((cell, index) => new RowCell(index < row.Block.Header.Columns.Count ? row.Block.Header.Columns[index].Header : "", index + 1, cell.Text))];
}
