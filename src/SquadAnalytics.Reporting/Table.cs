using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting;

/// <summary>
/// A table as a thing of its own: caption, columns with units, rows in which refusals stand where the number would be, and notes.
/// It becomes accessible HTML, plain text, or CSV.
/// </summary>
public sealed record Table
{
    /// <summary>Makes a table.</summary>
    /// <param name="caption">What it shows, in one sentence or phrase.</param>
    /// <param name="columns">Its columns; at least one. The first names the row.</param>
    /// <param name="rows">Its rows, each with as many cells as there are columns.</param>
    /// <exception cref="ArgumentException">The caption is empty, there is no column, or a row has another number of cells.</exception>
    public Table(string caption, IReadOnlyList<TableColumn> columns, IReadOnlyList<IReadOnlyList<TableCell>> rows)
    {
        ArgumentNullException.ThrowIfNull(columns);
        ArgumentNullException.ThrowIfNull(rows);
        Caption = string.IsNullOrWhiteSpace(caption) ? throw new ArgumentException("A table needs a caption.", nameof(caption)) : caption;
        if (columns.Count == 0) throw new ArgumentException("A table needs at least one column.", nameof(columns));
        for (var row = 0; row < rows.Count; row++)
        {
            if (rows[row].Count != columns.Count)
                throw new ArgumentException($"Row {row + 1} of table '{caption}' has {rows[row].Count} cells, but there are {columns.Count} columns.", nameof(rows));
        }

        Columns = [.. columns];
        Rows = [.. rows.Select(row => (IReadOnlyList<TableCell>)[.. row])];
    }

    /// <summary>What the table shows.</summary>
    public string Caption { get; }

    /// <summary>Its columns.</summary>
    public IReadOnlyList<TableColumn> Columns { get; }

    /// <summary>Its rows.</summary>
    public IReadOnlyList<IReadOnlyList<TableCell>> Rows { get; }

    /// <summary>What a reader has to know: level of the intervals, method, who was left out.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Over how many athletes all its figures are aggregates; null where they are single athletes' own, or say so cell by cell.</summary>
    public int? OverAthletes { get; init; }

    /// <summary>The same table without columns in which every row has nothing.</summary>
    internal Table WithoutEmptyColumns()
    {
        int[] kept = [.. Enumerable.Range(0, Columns.Count).Where(k => k == 0 || Rows.Any(row => row[k] != TableCell.Nothing))];
        return new Table(Caption, [.. kept.Select(k => Columns[k])], [.. Rows.Select(row => (IReadOnlyList<TableCell>)[.. kept.Select(k => row[k])])]) { Notes = Notes, OverAthletes = OverAthletes };
    }

    /// <summary>As an HTML fragment: caption, scoped headings, figures right-aligned, all text escaped.</summary>
    public string ToHtml() => TableHtml.Write(this);

    /// <summary>As CSV (RFC 4180, comma, invariant numbers at full precision); text that a spreadsheet would run as a formula is quoted out.</summary>
    public string ToCsv() => TableCsv.Write(this);

    /// <summary>As JSON, with everything that the table knows: full-precision numbers, units, group sizes.</summary>
    public string ToJson() => TableJson.Write(this);

    /// <summary>The table that <see cref="ToJson"/> wrote, or null where the text is none.</summary>
    /// <param name="json">The text.</param>
    public static Table? FromJson(string json) => TableJson.Read(json);

    /// <summary>As plain text with aligned columns.</summary>
    public string ToText() => TableText.Write(this);

    /// <summary>The plain text.</summary>
    public override string ToString() => ToText();
}
