using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="SquadTrend"/>.</summary>
public sealed record SquadTrendOptions
{
    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Degrees of freedom of the squad's trend and level; Satterthwaite's by default.</summary>
    public FixedEffectDegreesOfFreedom DegreesOfFreedom { get; init; } = FixedEffectDegreesOfFreedom.Satterthwaite;

    /// <summary>The date on which levels are read; null for the middle between the first and the last eligible test, which keeps levels and slopes apart best.</summary>
    public DateOnly? LevelOn { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
