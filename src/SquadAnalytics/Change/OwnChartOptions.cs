namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="OwnChart"/>.</summary>
public sealed record OwnChartOptions
{
    /// <summary>Whether residuals about the athlete's own straight trend over all eligible tests are charted instead of the totals; off by default.</summary>
    public bool AboutTrend { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
