using System.Text.Json.Nodes;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Files;

/// <summary>What a code cell put out, as a notebook file holds it.</summary>
/// <param name="ExecutionCount">The number by which the cell was run, or null where it was not.</param>
/// <param name="Outputs">Its outputs in order.</param>
/// <param name="Fault">What went wrong, or null.</param>
public sealed partial record CellOutputs(int? ExecutionCount, IReadOnlyList<CellOutput> Outputs, CellFault? Fault)
{
    /// <summary>Nothing: the cell was not run, or what it put out was cleared.</summary>
    public static CellOutputs None { get; } = new(null, [], null);

    /// <summary>Whether there is nothing to show.</summary>
    public bool IsEmpty => Outputs.Count == 0 && Fault is null;

    internal JsonArray ToJson()
    {
        var outputs = new JsonArray();
        foreach (var output in Outputs) outputs.Add(output is WrittenText text ? Stream(text) : Value((ShownValue)output));
        if (Fault is not null) outputs.Add(Error(Fault));
        return outputs;
    }

    private static JsonObject Stream(WrittenText text) => new()
    {
        ["output_type"] = "stream",
        ["name"] = text.IsError ? "stderr" : "stdout",
        ["text"] = NotebookFile.Lines(text.Text),
    };

    private JsonObject Value(ShownValue value)
    {
        var data = new JsonObject();
        foreach (var form in value.Forms) data[form.MimeType] = Content(form);
        var json = new JsonObject { ["output_type"] = value.IsResult ? "execute_result" : "display_data", ["data"] = data, ["metadata"] = new JsonObject() };
        if (value.IsResult) json["execution_count"] = ExecutionCount;
        return json;
    }

    private static JsonNode? Content(MimeContent form)
    {
        if (form.MimeType == MimeTypes.Png) return form.Content;
        if (!form.MimeType.EndsWith("json", StringComparison.Ordinal)) return NotebookFile.Lines(form.Content);
        try
        {
            return JsonNode.Parse(form.Content);
        }
        catch (System.Text.Json.JsonException)
        {
            // A cell may claim any type for any text; then it is kept as the text it is.
            return form.Content;
        }
    }

    private static JsonObject Error(CellFault fault) => new()
    {
        ["output_type"] = "error",
        ["ename"] = fault.Name ?? "Stopped",
        ["evalue"] = fault.Message,
        ["traceback"] = new JsonArray([fault.ToString(), .. fault.Trace.Select(static call => (JsonNode)call)]),
    };
}
