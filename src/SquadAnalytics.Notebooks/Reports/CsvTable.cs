using System.Globalization;
using System.Text;
using CsvHelper;
using SquadAnalytics.Reporting;

namespace SquadAnalytics.Notebooks.Reports;

/// <summary>A table that a cell wrote as CSV itself: read, so that it is exported by the same rules as any other.</summary>
internal static class CsvTable
{
    public static Table? Read(string csv)
    {
        using var reader = CsvReader.Create(Encoding.UTF8.GetBytes(csv), new CsvReaderOptions { Separator = ',', HasHeader = false, AllowLineBreaksInQuotes = true });
        var records = new List<string[]>();
        while (reader.Read()) records.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        if (records.Count == 0) return null;
        var columns = records[0].Select(static (heading, k) => new TableColumn(string.IsNullOrWhiteSpace(heading) ? string.Create(CultureInfo.InvariantCulture, $"column {k + 1}") : heading)).ToList();
        return new Table("Table as its cell wrote it", columns, [.. records.Skip(1).Select(record => columns.Select((_, k) => k < record.Length ? Cell(record[k]) : TableCell.Nothing).ToList())]);
    }

    private static TableCell Cell(string text)
    {
        if (text.Length == 0) return TableCell.Nothing;
        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? TableCell.Shown(text, number) : TableCell.Words(text);
    }
}
