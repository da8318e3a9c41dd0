namespace SquadAnalytics.Sets;

/// <summary>Rate of slowing across the sets of one session. Positive = slower with every set.</summary>
public sealed record SetSlopeResult
{
    /// <summary>The session described.</summary>
    public required Session Session { get; init; }

    /// <summary>Least-squares slope, in seconds per set; interval from 4 sets on.</summary>
    public required Estimate Linear { get; init; }

    /// <summary>Least-squares intercept (the line at set 0), in seconds.</summary>
    public required Estimate Intercept { get; init; }

    /// <summary>Least-squares slope of ln t, in percent per set; interval from 4 sets on.</summary>
    public required Estimate Relative { get; init; }

    /// <summary>Median of all pairwise slopes (Theil-Sen), in seconds per set.</summary>
    public required Estimate Robust { get; init; }

    /// <summary>Intercept of the robust line, the median of t_k - b k, in seconds.</summary>
    public required Estimate RobustIntercept { get; init; }

    /// <summary>The interval of the robust slope, or why it is not offered: it needs 8 sets.</summary>
    public required Answer<Interval> RobustInterval { get; init; }

    /// <summary>The slopes in one line.</summary>
    public override string ToString() => $"{Session.Date:yyyy-MM-dd}: {Linear}; {Relative}; robust {Robust}";
}
