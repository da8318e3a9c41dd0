using System.Text.Json;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Notebooks.Tests.Files;

/// <summary>
/// Checks a file against the rules of nbformat 4.5. Source: the format's published JSON schema (Jupyter nbformat, v4.5), its required
/// and allowed members written out by hand.
/// </summary>
internal static partial class NotebookFormatCheck
{
    /// <summary>Every rule that the file breaks, in words; empty for a valid file.</summary>
    public static IReadOnlyList<string> Problems(string json)
    {
        var problems = new List<string>();
        using var document = JsonDocument.Parse(json);
        var root = document.RootElement;
        Members(problems, "notebook", root, ["metadata", "nbformat", "nbformat_minor", "cells"], []);
        if (root.GetProperty("nbformat").GetInt32() != 4) problems.Add("nbformat is not 4");
        if (root.GetProperty("nbformat_minor").GetInt32() < 5) problems.Add("nbformat_minor is below 5");
        var kernel = root.GetProperty("metadata").GetProperty("kernelspec");
        foreach (var name in (string[])["name", "display_name"])
        {
            if (kernel.GetProperty(name).ValueKind != JsonValueKind.String) problems.Add($"kernelspec.{name} is not a string");
        }
        var ids = new HashSet<string>(StringComparer.Ordinal);
        foreach (var cell in root.GetProperty("cells").EnumerateArray()) Cell(problems, cell, ids);
        return problems;
    }

    private static void Cell(List<string> problems, JsonElement cell, HashSet<string> ids)
    {
        var type = cell.GetProperty("cell_type").GetString();
        if (type == "code") Members(problems, "code cell", cell, ["id", "cell_type", "metadata", "source", "outputs", "execution_count"], []);
        else Members(problems, $"{type} cell", cell, ["id", "cell_type", "metadata", "source"], ["attachments"]);
        var id = cell.GetProperty("id").GetString()!;
        if (!Identifier().IsMatch(id)) problems.Add($"'{id}' is no cell id");
        if (!ids.Add(id)) problems.Add($"the cell id {id} occurs twice");
        if (!IsText(cell.GetProperty("source"))) problems.Add("a source is neither text nor a list of lines");
        if (type != "code") return;
        if (cell.GetProperty("execution_count").ValueKind is not (JsonValueKind.Null or JsonValueKind.Number)) problems.Add("an execution count is no number");
        foreach (var output in cell.GetProperty("outputs").EnumerateArray()) Output(problems, output);
    }

    private static void Output(List<string> problems, JsonElement output)
    {
        switch (output.GetProperty("output_type").GetString())
        {
            case "stream":
                Members(problems, "stream", output, ["output_type", "name", "text"], []);
                if (!IsText(output.GetProperty("text"))) problems.Add("a stream's text is no text");
                break;
            case "display_data":
                Members(problems, "display_data", output, ["output_type", "data", "metadata"], []);
                Bundle(problems, output.GetProperty("data"));
                break;
            case "execute_result":
                Members(problems, "execute_result", output, ["output_type", "data", "metadata", "execution_count"], []);
                Bundle(problems, output.GetProperty("data"));
                break;
            case "error":
                Members(problems, "error", output, ["output_type", "ename", "evalue", "traceback"], []);
                if (output.GetProperty("traceback").EnumerateArray().Any(static line => line.ValueKind != JsonValueKind.String)) problems.Add("a traceback line is no string");
                break;
            case var other:
                problems.Add($"unknown output type {other}");
                break;
        }
    }

    private static void Bundle(List<string> problems, JsonElement data)
    {
        foreach (var form in data.EnumerateObject())
        {
            if (!JsonType().IsMatch(form.Name) && !IsText(form.Value)) problems.Add($"{form.Name} is neither text nor a list of lines");
        }
    }

    private static void Members(List<string> problems, string what, JsonElement element, string[] required, string[] allowed)
    {
        var present = element.EnumerateObject().Select(static member => member.Name).ToList();
        problems.AddRange(required.Except(present).Select(name => $"{what} lacks {name}"));
        problems.AddRange(present.Except(required).Except(allowed).Select(name => $"{what} must not have {name}"));
    }

    private static bool IsText(JsonElement element) => element.ValueKind == JsonValueKind.String
        || (element.ValueKind == JsonValueKind.Array && element.EnumerateArray().All(static line => line.ValueKind == JsonValueKind.String));

    [GeneratedRegex("^[a-zA-Z0-9-_]{1,64}$")]
    private static partial Regex Identifier();

    [GeneratedRegex(@"^application/(.*\+)?json$")]
    private static partial Regex JsonType();
}
