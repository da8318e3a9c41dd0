using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Notebooks.Tests.Files;

/// <summary>
/// Checks a file against the JSON schema of nbformat 4.5. Source: nbformat.v4.5.schema.json of the Python package nbformat 5.5.0 (BSD
/// 3-Clause), kept unchanged in tests/Reference/nbformat. The words of JSON Schema draft 4 that the schema uses are checked, and any
/// other word is an error of the check itself. That identifiers are unique, which a schema cannot say, is checked beside it.
/// </summary>
internal static class NotebookFormatCheck
{
    private static readonly HashSet<string> Silent = ["$schema", "description", "definitions", "item", "source_hidden"];
    private static readonly JsonObject Schema = JsonNode.Parse(File.ReadAllText(Path.Combine(Root(), "tests", "Reference", "nbformat", "nbformat.v4.5.schema.json")))!.AsObject();

    /// <summary>Every rule that the file breaks, in words; empty for a valid file.</summary>
    public static IReadOnlyList<string> Problems(string json)
    {
        var notebook = JsonNode.Parse(json)!;
        var ids = notebook["cells"] is JsonArray cells ? cells.Select(cell => cell?["id"]?.ToString()).OfType<string>().ToList() : [];
        return [.. Check(Schema, notebook, "notebook"), .. ids.GroupBy(id => id).Where(same => same.Count() > 1).Select(same => $"the cell id {same.Key} occurs twice")];
    }

    private static IEnumerable<string> Check(JsonObject schema, JsonNode? node, string place) => schema.SelectMany(word => Check(schema, word.Key, word.Value!, node, place));

    private static IEnumerable<string> Check(JsonObject schema, string word, JsonNode rule, JsonNode? node, string place) => word switch
    {
        "$ref" => Check(Definition(rule.ToString()), node, place),
        "type" => (rule is JsonArray types ? types.Any(type => IsType(type!.ToString(), node)) : IsType(rule.ToString(), node)) ? [] : [$"{place} is not of type {rule.ToJsonString()}"],
        "enum" => rule.AsArray().Any(value => JsonNode.DeepEquals(value, node)) ? [] : [$"{place} is none of {rule.ToJsonString()}"],
        "not" => Check(rule.AsObject(), node, place).Any() ? [] : [$"{place} is what it must not be"],
        "oneOf" => OneOf(rule.AsArray(), node, place),
        "required" => node is JsonObject parent ? rule.AsArray().Where(name => !parent.ContainsKey(name!.ToString())).Select(name => $"{place} lacks {name}") : [],
        "properties" => node is JsonObject parent ? rule.AsObject().Where(member => parent.ContainsKey(member.Key)).SelectMany(member => Check(member.Value!.AsObject(), parent[member.Key], $"{place}.{member.Key}")) : [],
        "patternProperties" => node is JsonObject parent ? rule.AsObject().SelectMany(pattern => parent.Where(member => Regex.IsMatch(member.Key, pattern.Key)).SelectMany(member => Check(pattern.Value!.AsObject(), member.Value, $"{place}.{member.Key}"))) : [],
        "additionalProperties" => node is JsonObject parent ? Others(schema, parent).SelectMany(member => Additional(rule, member.Value, $"{place}.{member.Key}")) : [],
        "items" => node is JsonArray items ? items.SelectMany((item, index) => Check(rule.AsObject(), item, $"{place}[{index}]")) : [],
        "uniqueItems" => node is JsonArray items && items.Select(item => item?.ToJsonString()).Distinct().Count() < items.Count ? [$"{place} has an item twice"] : [],
        "minimum" => node is JsonValue value && value.TryGetValue<double>(out var number) && number < rule.GetValue<double>() ? [$"{place} is below {rule}"] : [],
        "maximum" => node is JsonValue value && value.TryGetValue<double>(out var number) && number > rule.GetValue<double>() ? [$"{place} is above {rule}"] : [],
        "minLength" => Text(node) is { } text && text.Length < rule.GetValue<int>() ? [$"{place} is too short"] : [],
        "maxLength" => Text(node) is { } text && text.Length > rule.GetValue<int>() ? [$"{place} is too long"] : [],
        "pattern" => Text(node) is { } text && !Regex.IsMatch(text, rule.ToString()) ? [$"{place} does not match {rule}"] : [],
        _ when Silent.Contains(word) => [],
        _ => throw new NotSupportedException($"The schema says '{word}', which this check does not know."),
    };

    private static IEnumerable<string> OneOf(JsonArray rules, JsonNode? node, string place)
    {
        var broken = rules.Select(rule => Check(rule!.AsObject(), node, place).ToList()).ToList();
        return broken.Count(problems => problems.Count == 0) == 1 ? [] : broken.OrderBy(problems => problems.Count).First();
    }

    private static IEnumerable<string> Additional(JsonNode rule, JsonNode? node, string place) =>
        rule is JsonObject schema ? Check(schema, node, place) : rule.GetValue<bool>() ? [] : [$"{place} must not be there"];

    private static IEnumerable<KeyValuePair<string, JsonNode?>> Others(JsonObject schema, JsonObject parent) => parent.Where(member =>
        !(schema["properties"] is JsonObject known && known.ContainsKey(member.Key)) && !(schema["patternProperties"] is JsonObject patterns && patterns.Any(pattern => Regex.IsMatch(member.Key, pattern.Key))));

    private static JsonObject Definition(string reference) => reference.TrimStart('#', '/').Split('/').Aggregate((JsonNode)Schema, (node, name) => node[name]!).AsObject();

    private static bool IsType(string type, JsonNode? node) => type switch
    {
        "object" => node is JsonObject,
        "array" => node is JsonArray,
        "string" => Text(node) is not null,
        "boolean" => node is JsonValue value && value.TryGetValue<bool>(out _),
        "integer" => node is JsonValue value && value.TryGetValue<double>(out var number) && number == Math.Floor(number),
        "null" => node is null,
        _ => throw new NotSupportedException($"The schema says type '{type}', which this check does not know."),
    };

    private static string? Text(JsonNode? node) => node is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "SquadAnalytics.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("The tests run below the repository.");
    }
}
