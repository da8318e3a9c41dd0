using System.Globalization;
using System.Text;

namespace SquadAnalytics.Reporting.Internals;

/// <summary>Writes a table as CSV: comma, CRLF, quotes where needed, invariant numbers.</summary>
internal static class TableCsv
{
    /// <summary>Characters that make a spreadsheet read a cell as a formula, or that it strips before looking for one.</summary>
    private const string FormulaStarts = "=+-@\t\r\n|%\uFF1D\uFF0B\uFF0D\uFF20";

    public static string Write(Table table)
    {
        var csv = new StringBuilder();
        Line(csv, table.Columns.Select(column => Field(column.Label)));
        foreach (var row in table.Rows) Line(csv, row.Select(Field));
        return csv.ToString();
    }

    /// <summary>One field: text that would run as a formula gets an apostrophe in front, then everything is quoted where it must be.</summary>
    public static string Field(string text)
    {
        var start = text.TrimStart(' ', '\u00A0');
        var safe = start.Length > 0 && FormulaStarts.Contains(start[0], StringComparison.Ordinal) ? "'" + text : text;
        return safe.AsSpan().IndexOfAny(",\"\r\n") >= 0 || safe.StartsWith(' ') || safe.EndsWith(' ')
            ? $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : safe;
    }

    private static string Field(TableCell cell)
    {
        if (cell.Number is { } number) return number.ToString("R", CultureInfo.InvariantCulture);
        return ReferenceEquals(cell, TableCell.Nothing) ? "" : Field(cell.Text);
    }

    private static void Line(StringBuilder csv, IEnumerable<string> fields) => csv.AppendJoin(',', fields).Append("\r\n");
}
