using System.Text.Json.Nodes;

namespace SquadAnalytics.Notebooks.Files;

/// <summary>Pictures that a notebook file keeps inside a Markdown cell.</summary>
internal static class CellAttachments
{
    /// <summary>The text with each attached picture in place of its name.</summary>
    public static string PutInto(string source, NotebookCell cell)
    {
        if (cell.Original?["attachments"] is not JsonObject attachments) return source;
        foreach (var (name, forms) in attachments)
        {
            if ((forms as JsonObject)?.FirstOrDefault(static form => form.Key.StartsWith("image/", StringComparison.Ordinal)) is { Value: not null } picture)
                source = source.Replace($"(attachment:{name})", $"(data:{picture.Key};base64,{NotebookFile.Text(picture.Value).Replace("\n", "", StringComparison.Ordinal)})", StringComparison.Ordinal);
        }
        return source;
    }
}
