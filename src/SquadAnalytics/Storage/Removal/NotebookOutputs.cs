using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SquadAnalytics.Storage.Removal;

/// <summary>Takes out of a notebook file what its cells showed, which may name people; code, prose and everything else stay.</summary>
internal static class NotebookOutputs
{
    // As notebook files are written elsewhere: one space, letters as they are.
    private static readonly JsonSerializerOptions Layout = new() { WriteIndented = true, IndentSize = 1, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The file without outputs, or null where it is no notebook.</summary>
    public static byte[]? Without(byte[] file)
    {
        try
        {
            if (JsonNode.Parse(file) is not JsonObject notebook || notebook["cells"] is not JsonArray cells) return null;
            foreach (var cell in cells.OfType<JsonObject>().Where(static cell => cell.ContainsKey("outputs"))) (cell["outputs"], cell["execution_count"]) = (new JsonArray(), null);
            return [.. JsonSerializer.SerializeToUtf8Bytes(notebook, Layout), (byte)'\n'];
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException or ArgumentException)
        {
            return null;
        }
    }
}
