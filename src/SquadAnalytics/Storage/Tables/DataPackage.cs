using System.Text.Json;
using System.Text.Json.Nodes;

namespace SquadAnalytics.Storage.Tables;

/// <summary>Describes the tables in <c>datapackage.json</c>, so that any program knows their columns, types, units and keys.</summary>
/// <remarks>Source: Frictionless Data Package and Table Schema, version 1 (specs.frictionlessdata.io). <c>unit</c> and <c>layout</c> are properties of ours, which the standard allows.</remarks>
internal static class DataPackage
{
    public const string File = "datapackage.json";

    /// <summary>Version of the tables' layout. A newer one is not opened, so that nothing of it is lost.</summary>
    public const int Layout = 1;

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static byte[] Write(string squadName)
    {
        var package = new JsonObject
        {
            ["profile"] = "tabular-data-package",
            ["name"] = "squad-logbook",
            ["title"] = squadName,
            ["description"] = "Logbook of a squad. Times in seconds, lower is better. An empty cell means not written down. A text that begins with = + - @ or a control character is preceded by an apostrophe, so that no spreadsheet runs it as a formula.",
            ["layout"] = Layout,
            ["resources"] = new JsonArray([.. LogbookTables.All.Select(Resource)]),
        };
        return JsonSerializer.SerializeToUtf8Bytes(package, Indented);
    }

    /// <summary>The squad's name; anything wrong with the file is added to the problems.</summary>
    public static string ReadTitle(IReadOnlyDictionary<string, byte[]> files, TableSource source)
    {
        if (!files.TryGetValue(File, out var content))
        {
            source.Add(new CellProblem(File, 1, "is missing from the logbook folder", "the file put back"));
            return "?";
        }

        try
        {
            var package = JsonNode.Parse(content.AsSpan().StartsWith("\uFEFF"u8) ? content.AsSpan(3) : content) as JsonObject;
            if (package?["layout"] is JsonValue layout && layout.TryGetValue<int>(out var version) && version > Layout)
                source.Add(new CellProblem(File, 1, $"says layout {version}, written by a newer version of this program", $"layout {Layout} or less"));
            if (package?["title"] is JsonValue title && title.TryGetValue<string>(out var name) && !string.IsNullOrWhiteSpace(name)) return name;
            source.Add(new CellProblem(File, 1, "has no title", "a property \"title\" with the name of the squad"));
        }
        catch (JsonException error)
        {
            source.Add(new CellProblem(File, (error.LineNumber ?? 0) + 1, "is not JSON", "a Frictionless data package"));
        }

        return "?";
    }

    private static JsonObject Resource(Table table)
    {
        var schema = new JsonObject { ["fields"] = new JsonArray([.. table.Columns.Select(Field)]), ["missingValues"] = new JsonArray("") };
        if (table.Key.Count > 0) schema["primaryKey"] = new JsonArray([.. table.Key.Select(column => JsonValue.Create(column.Name))]);
        if (table.References.Count > 0) schema["foreignKeys"] = new JsonArray([.. table.References.Select(Key)]);
        return new JsonObject
        {
            ["profile"] = "tabular-data-resource",
            ["name"] = table.Name,
            ["path"] = table.File,
            ["description"] = table.Description,
            ["format"] = "csv",
            ["mediatype"] = "text/csv",
            ["encoding"] = "utf-8",
            ["dialect"] = new JsonObject { ["delimiter"] = ",", ["lineTerminator"] = "\n", ["quoteChar"] = "\"", ["doubleQuote"] = true, ["header"] = true },
            ["schema"] = schema,
        };
    }

    private static JsonObject Field(Column column)
    {
        var field = new JsonObject { ["name"] = column.Name, ["type"] = column.Type.ToString().ToLowerInvariant(), ["description"] = column.Description };
        if (column.Unit is not null) field["unit"] = column.Unit;
        var constraints = new JsonObject();
        if (column.IsRequired) constraints["required"] = true;
        if (column.Minimum is { } minimum) constraints["minimum"] = minimum;
        if (column.Choices is { } choices) constraints["enum"] = new JsonArray([.. choices.Select(choice => JsonValue.Create(choice))]);
        if (constraints.Count > 0) field["constraints"] = constraints;
        return field;
    }

    private static JsonObject Key(ForeignKey key) => new()
    {
        ["fields"] = key.Column.Name,
        ["reference"] = new JsonObject { ["resource"] = key.Table, ["fields"] = key.TableColumn },
    };
}
