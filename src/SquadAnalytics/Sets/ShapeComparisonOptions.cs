namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="ShapeComparison"/>.</summary>
public sealed record ShapeComparisonOptions
{
    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
