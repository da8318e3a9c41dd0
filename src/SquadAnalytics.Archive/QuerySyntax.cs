using System.Globalization;
using System.Text.Json;

namespace SquadAnalytics.Archive;

/// <summary>
/// Reads the database's own account of a query, which it gives for queries only: whatever would change data, settings or files has none.
/// What a query may call is a list of what is allowed; some functions that look like tables switch on log files or follow raw addresses.
/// </summary>
internal sealed class QuerySyntax
{
    private static readonly JsonDocumentOptions Deep = new() { MaxDepth = 4096 };

    private static readonly HashSet<string> TableFunctions = new(StringComparer.OrdinalIgnoreCase)
    {
        "range", "generate_series", "unnest", "repeat", "repeat_row", "summary", "histogram", "histogram_values", "json_each", "json_tree", "duckdb_tables", "duckdb_columns", "pragma_table_info",
    };

    private static readonly HashSet<string> ForbiddenFunctions = new(StringComparer.OrdinalIgnoreCase) { "write_log", "getenv", "query", "query_table", "read_text", "read_blob" };

    private readonly string _sql;
    private readonly Dictionary<string, NamedTable> _tables = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _own = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _parameters = new(StringComparer.Ordinal);

    private QuerySyntax(string sql) => _sql = sql;

    /// <summary>What the query names.</summary>
    /// <exception cref="QueryException">It is not one query, cannot be read, or calls what it may not.</exception>
    public static QueryReading Read(string sql, string account)
    {
        using var json = JsonDocument.Parse(account, Deep);
        var root = json.RootElement;
        if (root.GetProperty("error").GetBoolean()) throw Problem(sql, root);
        var statements = root.GetProperty("statements").GetArrayLength();
        if (statements == 0) throw new QueryException("There is no query in this cell.");
        if (statements > 1) throw new QueryException(string.Create(CultureInfo.InvariantCulture, $"There are {statements} queries; write one, and use a cell for each."));
        var syntax = new QuerySyntax(sql);
        syntax.Walk(root.GetProperty("statements")[0]);
        return new QueryReading([.. syntax._tables.Values.Where(table => !syntax._own.Contains(table.Name))], [.. syntax._parameters]);
    }

    private static QueryException Problem(string sql, JsonElement root)
    {
        var message = root.GetProperty("error_message").GetString() ?? "The query cannot be read.";
        if (root.GetProperty("error_type").GetString() == "not implemented")
        {
            return new QueryException("Only queries can be run: SELECT, WITH, FROM, VALUES, DESCRIBE, SUMMARIZE, and PIVOT with its values listed (ON status IN ('timed', 'not_started')). "
                + "A query changes nothing; give its result a name (#!sql --name evening) to use it further.");
        }

        var offset = root.TryGetProperty("position", out var position) && ulong.TryParse(position.GetString(), CultureInfo.InvariantCulture, out var at) ? at : ulong.MaxValue;
        return new QueryException(char.ToUpperInvariant(message[0]) + message[1..] + ".", QueryPlace.At(sql, offset));
    }

    private void Walk(JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in element.EnumerateArray()) Walk(item);
        }

        if (element.ValueKind != JsonValueKind.Object) return;
        Note(element);
        foreach (var property in element.EnumerateObject()) Walk(property.Value);
    }

    private void Note(JsonElement node)
    {
        switch (Text(node, "type"))
        {
            case "BASE_TABLE" when IsOurs(Text(node, "schema_name"), Text(node, "catalog_name")):
                var name = Text(node, "table_name")!;
                _tables.TryAdd(name, new NamedTable(name, Place(node)));
                break;
            case "TABLE_FUNCTION" when Text(node.GetProperty("function"), "function_name") is { } called && !TableFunctions.Contains(called):
                throw new QueryException($"{called} cannot be used here: a query reads the logbook's tables, and neither files nor settings.", Place(node));
            case "FUNCTION" when Text(node, "function_name") is { } called && ForbiddenFunctions.Contains(called):
                throw new QueryException($"{called} cannot be used here.", Place(node));
            case "VALUE_PARAMETER":
                _parameters.Add(Text(node, "identifier")!);
                break;
            default:
                break;
        }

        if (node.TryGetProperty("cte_map", out var defined) && defined.TryGetProperty("map", out var map))
        {
            foreach (var entry in map.EnumerateArray()) _own.Add(entry.GetProperty("key").GetString()!);
        }

        // A recursive query names itself outside that list.
        if (Text(node, "cte_name") is { } own) _own.Add(own);
    }

    private QueryPlace? Place(JsonElement node) =>
        node.TryGetProperty("query_location", out var location) && location.TryGetUInt64(out var offset) ? QueryPlace.At(_sql, offset) : null;

    private static bool IsOurs(string? schema, string? catalog) => (catalog is null or "" or ArchiveDatabase.Catalog) && (schema is null or "" or "main" or ArchiveDatabase.Catalog);

    private static string? Text(JsonElement node, string name) => node.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}
