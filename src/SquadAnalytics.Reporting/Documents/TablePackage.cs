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
        var names = tables.Select((table, k) => string.Create(CultureInfo.InvariantCulture, $"table-{k + 1:00}")).ToList();
        var package = new JsonObject
        {
            ["profile"] = "tabular-data-package",
            ["name"] = "squad-report-tables",
            ["title"] = title,
            ["description"] = "Tables of a report. Lower times are better; a negative change is faster. An empty cell means no value. A text that begins with a character which a spreadsheet would run as a formula is preceded by an apostrophe.",
            ["resources"] = new JsonArray([.. tables.Zip(names, Resource)]),
        };
        return
        [
            .. tables.Zip(names, (table, name) => new ExportedFile($"{name}.csv", Encoding.UTF8.GetBytes(table.ToCsv()))),
            new ExportedFile("datapackage.json", JsonSerializer.SerializeToUtf8Bytes(package, Indented)),
        ];
    }

    private static JsonObject Resource(Table table, string name) => new()
    {
        ["name"] = name,
        ["path"] = $"{name}.csv",
        ["title"] = table.Caption,
        ["profile"] = "tabular-data-resource",
        ["format"] = "csv",
        ["mediatype"] = "text/csv",
        ["encoding"] = "utf-8",
        ["schema"] = new JsonObject
        {
            ["fields"] = new JsonArray([.. table.Columns.Select((column, k) => Field(table, column, k))]),
            ["missingValues"] = new JsonArray(""),
        },
    };

    /// <summary>A column is of numbers where every cell holds one or nothing.</summary>
    private static JsonObject Field(Table table, TableColumn column, int k)
    {
        var cells = table.Rows.Select(row => row[k]).ToList();
        var numbers = cells.Any(cell => cell.Number is not null) && cells.All(cell => cell.Number is not null || ReferenceEquals(cell, TableCell.Nothing));
        var field = new JsonObject { ["name"] = column.Label, ["type"] = numbers ? "number" : "string" };
        if (column.Unit is { } unit) field["unit"] = unit;
        return field;
    }
}
