using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>
/// Cells of a sheet that are merged over several rows: the file holds their text once, and every row below has it too, as a person reads it.
/// Cells that are merged sideways need nothing: the header above them goes on until the next one.
/// </summary>
internal sealed class MergedCells
{
    // A merge over more rows than a squad has is a decoration.
    private const int MostRows = 500;
    private const int MostMerges = 10_000;

    private readonly List<Tall> _tall = [];

    /// <summary>Takes a range such as <c>A2:A5</c>; one within a row, and one that cannot be read, is passed over.</summary>
    public void Add(string? range)
    {
        if (range?.Split(':') is not [var first, var last] || _tall.Count >= MostMerges) return;
        var (from, to) = (Row(first), Row(last));
        if (from >= 1 && to > from && to - from < MostRows) _tall.Add(new Tall(SheetXml.Column(first), from, to));
    }

    /// <summary>Writes the texts into the rows below, of those that have anything of their own.</summary>
    public void FillDown(List<SourceLine> lines)
    {
        if (_tall.Count == 0) return;
        var byNumber = lines.Select((line, place) => (line.Number, Place: place)).ToDictionary(line => line.Number, line => line.Place);
        foreach (var tall in _tall.Where(tall => tall.Column >= 0 && byNumber.ContainsKey(tall.From)))
        {
            var text = lines[byNumber[tall.From]][tall.Column];
            if (text.IsBlank) continue;
            for (var row = tall.From + 1; row <= tall.To; row++)
            {
                if (byNumber.TryGetValue(row, out var place)) lines[place] = With(lines[place], tall.Column, text with { IsMerged = true });
            }
        }
    }

    private static SourceLine With(SourceLine line, int column, SourceCell cell)
    {
        var cells = new List<SourceCell>(line.Cells);
        while (cells.Count <= column) cells.Add(new SourceCell(""));
        if (cells[column].IsBlank) cells[column] = cell;
        return line with { Cells = cells };
    }

    private static int Row(string reference) =>
        int.TryParse(reference.AsSpan().TrimStart("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz$"), NumberStyles.None, CultureInfo.InvariantCulture, out var row) ? row : 0;

    private sealed record Tall(int Column, int From, int To);
}
