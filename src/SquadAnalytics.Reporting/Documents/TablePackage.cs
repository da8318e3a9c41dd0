using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Tables as CSV files with a <c>datapackage.json</c> that tells other programs their columns, types and units.</summary>
/// <remarks>Source: Frictionless Data Package and Table Schema, version 1 (specs.frictionlessdata.io). <c>unit</c> is a property of ours, which the standard allows.</remarks>
public static class TablePackage
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The files of the package: one for each table, in order, and the description.</summary>
    /// <param name="title">Title of the package.</param>
    /// <param name="tables">The tables.</param>
    public static IReadOnlyList<ExportedFile> Of(string title, IReadOnlyList<Table> tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        return Of(title, [.. tables.Select((table, k) => new NamedTable(string.Create(CultureInfo.InvariantCulture, $"table-{k + 1:00}"), table))]);
    }

    /// <summary>The files of the package: one for each table, in order, under its name, and the description.</summary>
    /// <param name="title">Title of the package.</param>
    /// <param name="tables">The tables with the names of their files, each once.</param>
    public static IReadOnlyList<ExportedFile> Of(string title, IReadOnlyList<NamedTable> tables)
    {
        ArgumentNullException.ThrowIfNull(tables);
        var package = new JsonObject
        {
            ["profile"] = "tabular-data-package",
            ["name"] = "squad-report-tables",
            ["title"] = title,
            ["description"] = "Tables of a report. Lower times are better; a negative change is faster. An empty cell means no value. A text that begins with a character which a spreadsheet would run as a formula is preceded by an apostrophe.",
            ["resources"] = new JsonArray([.. tables.Select(Resource)]),
        };
        return
        [
            .. tables.Select(static named => new ExportedFile($"{named.Name}.csv", Encoding.UTF8.GetBytes(named.Table.ToCsv()))),
            new ExportedFile("datapackage.json", JsonSerializer.SerializeToUtf8Bytes(package, Indented)),
        ];
    }

    private static JsonObject Resource(NamedTable named) => new()
    {
        ["name"] = named.Name,
        ["path"] = $"{named.Name}.csv",
        ["title"] = named.Table.Caption,
        ["profile"] = "tabular-data-resource",
        ["format"] = "csv",
        ["mediatype"] = "text/csv",
        ["encoding"] = "utf-8",
        ["schema"] = new JsonObject
        {
            ["fields"] = new JsonArray([.. named.Table.Columns.Select((column, k) => Field(named.Table, column, k))]),
            ["missingValues"] = new JsonArray(""),
        },
    };

    /// <summary>A column is of numbers or dates where every cell holds one or nothing.</summary>
    private static JsonObject Field(Table table, TableColumn column, int k)
    {
        var cells = table.Rows.Select(row => row[k]).ToList();
        var numbers = cells.Any(cell => cell.Number is not null) && cells.All(cell => cell.Number is not null || ReferenceEquals(cell, TableCell.Nothing));
        var dates = !numbers && cells.Any(static cell => IsDate(cell)) && cells.All(static cell => IsDate(cell) || ReferenceEquals(cell, TableCell.Nothing));
        var field = new JsonObject { ["name"] = column.Label, ["type"] = numbers ? "number" : dates ? "date" : "string" };
        if (column.Unit is { } unit) field["unit"] = unit;
        return field;
    }

    private static bool IsDate(TableCell cell) => DateOnly.TryParseExact(cell.Text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _);
}
