using System.Globalization;
using CsvHelper;

namespace SquadAnalytics.Storage.Tables;

/// <summary>Writes one table as CSV: UTF-8, commas, line feeds, numbers with a decimal point in the shortest form that reads back exactly.</summary>
internal sealed class CsvTableWriter : TableWriter, IDisposable
{
    private static readonly CsvWriterOptions Options = new() { NewLine = "\n", FormatProvider = CultureInfo.InvariantCulture };
    private readonly MemoryStream _bytes = new();
    private readonly CsvWriter _csv;
    private readonly Table _table;
    private int _field;

    private CsvTableWriter(Table table)
    {
        _table = table;
        _csv = CsvWriter.Create(_bytes, Options, leaveOpen: true);
    }

    /// <summary>The bytes of a table with one row for each item.</summary>
    public static byte[] Write<T>(Table table, IEnumerable<T> items, Action<TableWriter, T> row)
    {
        using var writer = new CsvTableWriter(table);
        foreach (var column in table.Columns) writer._csv.WriteField(column.Name);
        writer._csv.EndRecord();
        foreach (var item in items)
        {
            writer._field = 0;
            row(writer, item);
            writer._csv.EndRecord();
        }

        writer._csv.Flush();
        return writer._bytes.ToArray();
    }

    public override TableWriter Text(string? text)
    {
        var column = Next();
        if (column.IsRequired && string.IsNullOrWhiteSpace(text)) throw new ArgumentException($"Table {_table.Name} needs a {column.Name} in every row.");
        _csv.WriteField(text is null ? "" : SafeText.Protect(text));
        return this;
    }

    public override TableWriter Date(DateOnly? date)
    {
        Next();
        _csv.WriteField(date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        return this;
    }

    public override TableWriter Moment(DateTimeOffset moment)
    {
        Next();
        _csv.WriteField(moment.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture));
        return this;
    }

    public override TableWriter Number(double? number)
    {
        var column = Next();
        if (number is { } value && !double.IsFinite(value)) throw new ArgumentException($"A {column.Name} in table {_table.Name} is not a finite number.");
        _csv.WriteField(number);
        return this;
    }

    public override TableWriter Integer(long? number)
    {
        Next();
        _csv.WriteField(number);
        return this;
    }

    public override TableWriter Flag(bool flag)
    {
        Next();
        _csv.WriteField(flag ? "true" : "false");
        return this;
    }

    private Column Next() => _table.Columns[_field++];

    public void Dispose()
    {
        _csv.Dispose();
        _bytes.Dispose();
    }
}
