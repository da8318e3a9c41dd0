namespace SquadAnalytics.Load;

/// <summary>Do load before a test and its total go together within athletes? An association, not a cause.</summary>
public sealed record LoadAssociationResult
{
    /// <summary>One row per window, in the order in which they were named.</summary>
    public required IReadOnlyList<LoadAssociationRow> Rows { get; init; }

    /// <summary>What was held together.</summary>
    public required LoadAssociationForm Form { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>How to read it.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The rows.</summary>
    public override string ToString() => string.Join("; ", Rows);
}
