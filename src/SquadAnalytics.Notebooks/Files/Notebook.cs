using System.Text.Json.Nodes;

namespace SquadAnalytics.Notebooks.Files;

/// <summary>A notebook: prose and code in order, as an <c>.ipynb</c> file holds them.</summary>
/// <param name="Cells">Its cells in order.</param>
public sealed record Notebook(IReadOnlyList<NotebookCell> Cells)
{
    /// <summary>What the file says of the notebook, unknown parts included, so that saving keeps them.</summary>
    internal JsonObject? Original { get; init; }

    /// <summary>The cell with the parameters, or null where there is none.</summary>
    public NotebookCell? ParametersCell => Cells.FirstOrDefault(static cell => cell.HoldsParameters);

    /// <summary>The first top heading of its prose, or null.</summary>
    public string? Title => Prose().Where(static line => line.StartsWith("# ", StringComparison.Ordinal)).Select(static line => line[2..].Trim()).FirstOrDefault();

    /// <summary>The first line of prose below the title: the question that the notebook answers; or null.</summary>
    public string? Question => Prose().Where(static line => line.Length > 0 && !line.StartsWith('#')).Select(static line => line.Trim('*', '_', ' ')).FirstOrDefault();

    /// <summary>The notebook with one cell in place of the one that has the same identifier.</summary>
    public Notebook With(NotebookCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return this with { Cells = [.. Cells.Select(other => other.Id == cell.Id ? cell : other)] };
    }

    private IEnumerable<string> Prose() => Cells.Where(static cell => cell.Kind == CellKind.Markdown).SelectMany(static cell => cell.Source.Split('\n')).Select(static line => line.Trim());
}
