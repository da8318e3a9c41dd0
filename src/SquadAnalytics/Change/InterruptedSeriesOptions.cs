using SquadAnalytics.Internals;

namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="InterruptedSeries"/>.</summary>
public sealed record InterruptedSeriesOptions
{
    private readonly int _neweyWestLag = 2;

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>How many tests back the Newey-West standard errors look; 0 or more, 2 by default.</summary>
    public int NeweyWestLag
    {
        get => _neweyWestLag;
        init => _neweyWestLag = Require.AtLeast(0, value, nameof(NeweyWestLag));
    }

    /// <summary>Whether a squad's weeks are plain means of those who came; off by default, because who came changes them.</summary>
    public bool PlainMeans { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
