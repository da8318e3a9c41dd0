using System.Text.Json.Nodes;

namespace SquadAnalytics.Notebooks.Files;

/// <summary>One cell of a notebook.</summary>
public sealed record NotebookCell
{
    /// <summary>The tag of the one cell whose literals are the notebook's parameters.</summary>
    public const string ParametersTag = "parameters";

    /// <summary>The tag of a cell that only other programs run: it loads the library, which is in scope here already.</summary>
    public const string SetupTag = "jupyter-setup";

    /// <summary>Makes a cell.</summary>
    /// <param name="kind">What it is.</param>
    /// <param name="source">Its text.</param>
    /// <param name="id">Its identifier in the file, 1 to 64 letters, digits, hyphens or underscores; a new one where none is given.</param>
    public NotebookCell(CellKind kind, string source, string? id = null)
    {
        ArgumentNullException.ThrowIfNull(source);
        Kind = kind;
        Source = source;
        Id = id ?? Guid.NewGuid().ToString("N")[..8];
    }

    /// <summary>What it is.</summary>
    public CellKind Kind { get; }

    /// <summary>Its identifier in the file.</summary>
    public string Id { get; internal init; }

    /// <summary>Its text, lines ending in a line feed.</summary>
    public string Source { get; init; }

    /// <summary>The kernel that runs it, for code: <c>csharp</c> or <c>sql</c>.</summary>
    public string Language { get; init; } = NotebookFile.DefaultLanguage;

    /// <summary>Its tags.</summary>
    public IReadOnlyList<string> Tags { get; init; } = [];

    /// <summary>Whether it holds the notebook's parameters.</summary>
    public bool HoldsParameters => Kind == CellKind.Code && Tags.Contains(ParametersTag, StringComparer.Ordinal);

    /// <summary>Whether only other programs run it.</summary>
    public bool IsForOtherPrograms => Kind == CellKind.Code && Tags.Contains(SetupTag, StringComparer.Ordinal);

    /// <summary>What the cell put out when it was run since the file was read; null where it was not, and what the file holds stays.</summary>
    public CellOutputs? Run { get; init; }

    /// <summary>What the cell put out last, here or as the file holds it.</summary>
    public CellOutputs Outputs => Run ?? CellOutputs.LastOf(this);

    /// <summary>What the file says of the cell, unknown parts included, so that saving keeps them.</summary>
    internal JsonObject? Original { get; init; }

    /// <summary>A few words that tell the cell from others: its first comment or line of code.</summary>
    public string Name()
    {
        if (HoldsParameters) return "Parameters";
        if (IsForOtherPrograms) return "Setup for other programs";
        var lines = Source.Split('\n').Select(static line => line.Trim()).Where(static line => line.Length > 0 && !line.StartsWith("#!", StringComparison.Ordinal));
        var first = lines.FirstOrDefault() ?? "empty";
        if (first.StartsWith("//", StringComparison.Ordinal)) first = first.TrimStart('/', ' ');
        if (first.StartsWith("--", StringComparison.Ordinal)) first = first.TrimStart('-', ' ');
        if (first.StartsWith('#')) first = first.TrimStart('#', ' ');
        return first.Length <= 60 ? first : first[..59] + "…";
    }
}
