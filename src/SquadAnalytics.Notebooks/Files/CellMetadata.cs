using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Notebooks.Files;

/// <summary>What notebook files say about languages, tags and identifiers.</summary>
internal static partial class CellMetadata
{
    private static readonly string[] LanguageLines = ["csharp", "c#", "fsharp", "f#", "sql", "pwsh", "html", "javascript"];

    /// <summary>The language that the metadata of a cell or of a notebook name, or null.</summary>
    public static string? LanguageOf(JsonObject? metadata)
    {
        if (metadata is null) return null;
        var named = Text(metadata["polyglot_notebook"], "kernelName") ?? Text(metadata["dotnet_interactive"], "language") ?? Text(metadata["kernelspec"], "name");
        if (named is not null) return Short(named);
        // The engine's own notebooks name the default kernel below the list of kernels.
        return metadata["polyglot_notebook"] is JsonObject polyglot ? Text(polyglot["kernelInfo"], "defaultKernelName") : null;
    }

    /// <summary>The language named by a line such as <c>#!sql --name evening</c> at the top of a cell, or null.</summary>
    public static string? LanguageOfFirstLine(string source)
    {
        var word = source.TrimStart().Split('\n')[0].Trim().Split(' ')[0];
        return word.StartsWith("#!", StringComparison.Ordinal) && LanguageLines.Contains(word[2..], StringComparer.OrdinalIgnoreCase) ? Short(word[2..]) : null;
    }

    /// <summary>An identifier as the format demands it, or null for a new one.</summary>
    public static string? ValidId(string? id) => id is not null && Identifier().IsMatch(id) ? id : null;

    /// <summary>The metadata of a cell for writing: both ways of naming its language, its tags, and whatever else was there.</summary>
    public static JsonObject OfCell(NotebookCell cell, JsonObject? known)
    {
        var metadata = known is null ? [] : (JsonObject)known.DeepClone();
        if (cell.Tags.Count > 0) metadata["tags"] = new JsonArray([.. cell.Tags.Distinct(StringComparer.Ordinal).Select(static tag => (JsonNode)tag)]);
        else metadata.Remove("tags");
        if (cell.Kind != CellKind.Code) return metadata;
        Child(metadata, "dotnet_interactive")["language"] = cell.Language;
        Child(metadata, "polyglot_notebook")["kernelName"] = cell.Language;
        return metadata;
    }

    /// <summary>The metadata of a notebook for writing: the kernel that other programs should use, and whatever else was there.</summary>
    public static JsonObject OfNotebook(JsonObject? known)
    {
        var metadata = known is null ? [] : (JsonObject)known.DeepClone();
        if (metadata["kernelspec"] is not JsonObject)
            metadata["kernelspec"] = new JsonObject { ["display_name"] = ".NET (C#)", ["language"] = "C#", ["name"] = ".net-csharp" };
        if (metadata["language_info"] is not JsonObject) metadata["language_info"] = new JsonObject { ["name"] = "C#" };
        return metadata;
    }

    private static string Short(string name) => name.ToLowerInvariant() switch
    {
        ".net-csharp" or "c#" => "csharp",
        ".net-fsharp" or "f#" => "fsharp",
        ".net-powershell" => "pwsh",
        var other => other,
    };

    private static string? Text(JsonNode? node, string name) =>
        node is JsonObject parent && parent[name] is JsonValue value && value.TryGetValue<string>(out var text) && text.Length > 0 ? text : null;

    private static JsonObject Child(JsonObject parent, string name)
    {
        if (parent[name] is JsonObject child) return child;
        var made = new JsonObject();
        parent[name] = made;
        return made;
    }

    [GeneratedRegex("^[a-zA-Z0-9-_]{1,64}$", RegexOptions.CultureInvariant)]
    private static partial Regex Identifier();
}
