using System.Text.Json.Nodes;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Files;

/// <content>Reading what a notebook file holds.</content>
public sealed partial record CellOutputs
{
    /// <summary>What a code cell of a notebook file put out last.</summary>
    internal static CellOutputs LastOf(NotebookCell cell) => new(NotebookFile.Number(cell.Original?["execution_count"]), Read(cell), FaultOf(cell.Original?["outputs"] as JsonArray));

    /// <summary>What a code cell of a notebook file put out, errors left out; an output of an unknown kind is passed over.</summary>
    internal static IReadOnlyList<CellOutput> Read(NotebookCell cell) =>
        cell.Original?["outputs"] is JsonArray outputs ? [.. outputs.OfType<JsonObject>().Select(Read).OfType<CellOutput>()] : [];

    private static CellOutput? Read(JsonObject output) => output["output_type"]?.ToString() switch
    {
        "stream" => new WrittenText(NotebookFile.Text(output["text"]), output["name"]?.ToString() == "stderr"),
        "display_data" => Value(output, isResult: false),
        "execute_result" => Value(output, isResult: true),
        _ => null,
    };

    private static CellFault? FaultOf(JsonArray? outputs) => outputs?.OfType<JsonObject>()
        .Where(static output => output["output_type"]?.ToString() == "error")
        .Select(static output => new CellFault(output["evalue"]?.ToString() ?? "The cell failed.") { Name = output["ename"]?.ToString() })
        .FirstOrDefault();

    private static ShownValue Value(JsonObject output, bool isResult) =>
        new(output["data"] is JsonObject data ? [.. data.Select(static form => new MimeContent(form.Key, Content(form.Value)))] : [], isResult);

    private static string Content(JsonNode? node) => node switch
    {
        JsonArray lines when lines.All(static line => line is JsonValue value && value.TryGetValue<string>(out _)) => NotebookFile.Text(lines),
        JsonValue text when text.TryGetValue<string>(out var written) => written,
        _ => node?.ToJsonString() ?? "",
    };
}
