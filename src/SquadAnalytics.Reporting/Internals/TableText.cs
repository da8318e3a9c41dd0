using System.Globalization;
using System.Text;

namespace SquadAnalytics.Reporting.Internals;

/// <summary>Writes a table as plain text with aligned columns.</summary>
internal static class TableText
{
    private const string Gap = "  ";

    public static string Write(Table table)
    {
        var widths = table.Columns.Select((column, k) => Math.Max(Width(column.Label), table.Rows.Select(row => Width(Line(row[k].Text))).DefaultIfEmpty(0).Max())).ToList();
        var text = new StringBuilder();
        text.Append(Line(table.Caption)).Append('\n');
        Row(text, table, widths, table.Columns.Select(column => column.Label));
        text.AppendJoin(Gap, widths.Select(width => new string('-', width))).Append('\n');
        foreach (var row in table.Rows) Row(text, table, widths, row.Select(cell => Line(cell.Text)));
        foreach (var note in table.Notes) text.Append("Note: ").Append(Line(note)).Append('\n');
        return text.ToString();
    }

    private static void Row(StringBuilder text, Table table, IReadOnlyList<int> widths, IEnumerable<string> cells)
    {
        var padded = cells.Select((cell, k) =>
        {
            var padding = new string(' ', widths[k] - Width(cell));
            return table.Columns[k].Alignment == ColumnAlignment.Right ? padding + cell : cell + padding;
        });
        text.Append(string.Join(Gap, padded).TrimEnd()).Append('\n');
    }

    /// <summary>How many places a text takes: one per letter as a reader counts them, accents included.</summary>
    private static int Width(string text) => new StringInfo(text).LengthInTextElements;

    private static string Line(string text) => text.ReplaceLineEndings(" ");
}
