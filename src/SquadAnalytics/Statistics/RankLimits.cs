namespace SquadAnalytics.Statistics;

/// <summary>How the limits of a Theil-Sen slope are read off the ordered pairwise slopes.</summary>
public enum RankLimits
{
    /// <summary>The order statistics at the rounded ranks (halves to even); the default.</summary>
    Rounded,

    /// <summary>Interpolated linearly between the order statistics around the ranks.</summary>
    Interpolated,
}
