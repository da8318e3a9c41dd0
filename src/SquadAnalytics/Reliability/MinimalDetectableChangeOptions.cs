namespace SquadAnalytics.Reliability;

/// <summary>Options of <see cref="MinimalDetectableChange"/>.</summary>
public sealed record MinimalDetectableChangeOptions
{
    /// <summary>The level c; 95 % by default.</summary>
    public ConfidenceLevel Level { get; init; } = ConfidenceLevel.NinetyFive;

    /// <summary>Which quantile is used.</summary>
    public DetectionFactor Factor { get; init; }
}
