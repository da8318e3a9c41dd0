namespace SquadAnalytics.Sets;

/// <summary>Options of <see cref="LateSlowdown"/>.</summary>
public sealed record LateSlowdownOptions
{
    /// <summary>The set b after which the athlete is said to slow, named before looking at the data; null to search for it.</summary>
    public int? AfterSet { get; init; }

    /// <summary>Seconds (default) or logarithms, reported as percent.</summary>
    public Scale Scale { get; init; }

    /// <summary>Level of the intervals; 90 % by default, so that each claim is a one-sided 5 % rule.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();

    /// <summary>Seed of the random sign flips that stand in for all of them above 12 sessions.</summary>
    public int Seed { get; init; } = 1;
}
