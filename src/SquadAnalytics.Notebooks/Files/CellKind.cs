namespace SquadAnalytics.Notebooks.Files;

/// <summary>What a cell of a notebook is.</summary>
public enum CellKind
{
    /// <summary>Code that is run.</summary>
    Code,

    /// <summary>Prose, in Markdown.</summary>
    Markdown,

    /// <summary>Content for other programs; kept, neither run nor shown.</summary>
    Raw,
}
