namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="SetNoise"/>.</summary>
public sealed record SetNoiseOptions
{
    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();

    /// <summary>Level of the interval; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }
}
