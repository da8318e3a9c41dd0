namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="SetSlope"/>.</summary>
public sealed record SetSlopeOptions
{
    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }
}
