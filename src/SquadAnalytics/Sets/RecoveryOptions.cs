namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="Recovery"/>.</summary>
public sealed record RecoveryOptions
{
    /// <summary>Level of the set of time constants; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Whether sessions in which a set left no rest are used too; left out by default.</summary>
    public bool IncludeNoRest { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
