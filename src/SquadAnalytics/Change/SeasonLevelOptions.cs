namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="SeasonLevel"/>.</summary>
public sealed record SeasonLevelOptions
{
    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
