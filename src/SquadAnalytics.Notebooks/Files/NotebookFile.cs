using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace SquadAnalytics.Notebooks.Files;

/// <summary>
/// Reads and writes <c>.ipynb</c> files (nbformat 4). They are handled as JSON rather than through the notebook engine, whose own
/// reader drops what it does not know.
/// </summary>
public static partial class NotebookFile
{
    /// <summary>The language of code cells that name none.</summary>
    public const string DefaultLanguage = "csharp";

    private const int Major = 4;
    private const int Minor = 5;
    private const long LongestFile = 64L << 20;
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    // Other programs write notebooks with one space of indentation and letters as they are; differences between versions stay small.
    private static readonly JsonWriterOptions Layout = new() { Indented = true, IndentSize = 1, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Reads a file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="NotebookFormatException">It is not a notebook.</exception>
    public static Notebook Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (!File.Exists(path)) throw new FileNotFoundException($"There is no notebook {path}.", path);
        if (new FileInfo(path).Length > LongestFile) throw new NotebookFormatException($"{path} is larger than the {LongestFile >> 20} MB that a notebook may have.");
        try
        {
            return Parse(File.ReadAllText(path, Utf8));
        }
        catch (NotebookFormatException error)
        {
            throw new NotebookFormatException($"{path}: {error.Message}", error);
        }
    }

    /// <summary>Reads the text of a file.</summary>
    /// <param name="json">The text.</param>
    /// <exception cref="NotebookFormatException">It is not a notebook.</exception>
    public static Notebook Parse(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        try
        {
            if (JsonNode.Parse(json) is not JsonObject root) throw new NotebookFormatException("A notebook is a JSON object.");
            if (Number(root["nbformat"]) != Major) throw new NotebookFormatException("Only notebooks of format 4 can be read; save it anew with a current version of the program that wrote it.");
            if (root["cells"] is not JsonArray cells) throw new NotebookFormatException("The notebook has no list of cells.");
            var language = CellMetadata.LanguageOf(root["metadata"] as JsonObject) ?? DefaultLanguage;
            return new Notebook([.. cells.Select((cell, index) => ReadCell(cell as JsonObject, index, language))]) { Original = root };
        }
        catch (JsonException error)
        {
            throw new NotebookFormatException(string.Create(CultureInfo.InvariantCulture, $"The file is not a notebook: it is no JSON from line {error.LineNumber + 1} on."), error);
        }
        catch (Exception error) when (error is InvalidOperationException or ArgumentException)
        {
            throw new NotebookFormatException("The file is not a notebook: " + error.Message, error);
        }
    }

    /// <summary>Writes a notebook to a file, whole or not at all.</summary>
    /// <param name="notebook">The notebook; outputs that the file held are kept.</param>
    /// <param name="path">The file.</param>
    public static void Write(Notebook notebook, string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var beside = path + ".partial";
        using (var file = new FileStream(beside, FileMode.Create, FileAccess.Write))
        {
            file.Write(Utf8.GetBytes(ToJson(notebook)));
            file.Flush(flushToDisk: true);
        }
        File.Move(beside, path, overwrite: true);
    }

    /// <summary>The text of a file for a notebook, format 4.5; what the notebook's own file said beyond that is kept.</summary>
    /// <param name="notebook">The notebook.</param>
    public static string ToJson(Notebook notebook) => ToJson(notebook, static cell => cell.Run);

    /// <summary>The text of a file, with outputs put into its code cells.</summary>
    internal static string ToJson(Notebook notebook, Func<NotebookCell, CellOutputs?> outputs)
    {
        ArgumentNullException.ThrowIfNull(notebook);
        var root = notebook.Original is null ? [] : (JsonObject)notebook.Original.DeepClone();
        var ids = new HashSet<string>(StringComparer.Ordinal);
        root["cells"] = new JsonArray([.. notebook.Cells.Select(cell => WriteCell(cell, outputs(cell), ids))]);
        root["metadata"] = CellMetadata.OfNotebook(root["metadata"] as JsonObject);
        root["nbformat"] = Major;
        root["nbformat_minor"] = Math.Max(Minor, Number(root["nbformat_minor"]) ?? Minor);
        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, Layout)) root.WriteTo(writer);
        return Utf8.GetString(bytes.ToArray()) + "\n";
    }

    private static NotebookCell ReadCell(JsonObject? cell, int index, string notebookLanguage)
    {
        if (cell is null) throw new NotebookFormatException($"Cell {index + 1} is not an object.");
        var kind = (string?)cell["cell_type"] switch
        {
            "code" => CellKind.Code,
            "markdown" => CellKind.Markdown,
            "raw" => CellKind.Raw,
            var other => throw new NotebookFormatException($"Cell {index + 1} is of the unknown type '{other}'."),
        };
        var metadata = cell["metadata"] as JsonObject;
        var source = Text(cell["source"]);
        return new NotebookCell(kind, source, CellMetadata.ValidId((string?)cell["id"]))
        {
            Language = CellMetadata.LanguageOf(metadata) ?? CellMetadata.LanguageOfFirstLine(source) ?? notebookLanguage,
            Tags = metadata?["tags"] is JsonArray tags ? [.. tags.Select(static tag => (string?)tag).OfType<string>()] : [],
            Original = cell,
        };
    }

    private static JsonObject WriteCell(NotebookCell cell, CellOutputs? outputs, HashSet<string> ids)
    {
        var json = cell.Original is null ? [] : (JsonObject)cell.Original.DeepClone();
        json["cell_type"] = cell.Kind.ToString().ToLowerInvariant();
        json["id"] = ids.Add(cell.Id) ? cell.Id : Unused(cell.Id, ids);
        json["metadata"] = CellMetadata.OfCell(cell, json["metadata"] as JsonObject);
        json["source"] = Lines(cell.Source);
        if (cell.Kind == CellKind.Code)
        {
            json["execution_count"] = outputs is null ? json["execution_count"]?.DeepClone() : outputs.ExecutionCount;
            json["outputs"] = outputs is null ? json["outputs"]?.DeepClone() ?? new JsonArray() : outputs.ToJson();
        }
        return json;
    }

    private static string Unused(string id, HashSet<string> ids)
    {
        var number = 2;
        while (!ids.Add($"{id[..Math.Min(id.Length, 60)]}-{number}")) number++;
        return $"{id[..Math.Min(id.Length, 60)]}-{number}";
    }

    /// <summary>A text as the list of its lines, which is how notebooks hold it.</summary>
    internal static JsonArray Lines(string text)
    {
        var lines = new JsonArray();
        for (var start = 0; start < text.Length;)
        {
            var end = text.IndexOf('\n', start) is >= 0 and var at ? at + 1 : text.Length;
            lines.Add((JsonNode)text[start..end]);
            start = end;
        }
        return lines;
    }

    /// <summary>A text that is held as one or as the list of its lines.</summary>
    internal static string Text(JsonNode? node) => (node switch
    {
        JsonArray lines => string.Concat(lines.Select(static line => line?.ToString())),
        JsonValue text => text.ToString(),
        _ => "",
    }).ReplaceLineEndings("\n");

    internal static int? Number(JsonNode? node) => node is JsonValue value && value.TryGetValue<int>(out var number) ? number : null;
}
