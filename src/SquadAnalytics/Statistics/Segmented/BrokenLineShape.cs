namespace SquadAnalytics.Statistics;

/// <summary>The two continuous lines with one bend.</summary>
public enum BrokenLineShape
{
    /// <summary>A line that bends: its own slope before and after the knot.</summary>
    Hinge,

    /// <summary>Level up to the knot, a slope after it.</summary>
    Plateau,
}
