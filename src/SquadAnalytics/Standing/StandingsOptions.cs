using SquadAnalytics.Internals;

namespace SquadAnalytics.Standing;

/// <summary>Options of <see cref="Standings"/>.</summary>
public sealed record StandingsOptions
{
    private readonly int _recentTests = 3;
    private readonly int _recentWeeks = 8;

    /// <summary>How many of the last eligible tests are averaged to the level; 1 or more. Default 3.</summary>
    public int RecentTests
    {
        get => _recentTests;
        init => _recentTests = Require.AtLeast(1, value, nameof(RecentTests));
    }

    /// <summary>How many weeks back a test still counts as recent; 1 or more. Default 8.</summary>
    public int RecentWeeks
    {
        get => _recentWeeks;
        init => _recentWeeks = Require.AtLeast(1, value, nameof(RecentWeeks));
    }

    /// <summary>The last day that is looked at; null for the latest eligible test.</summary>
    public DateOnly? On { get; init; }

    /// <summary>Which probability a new band needs.</summary>
    public ProbableBandOptions Band { get; init; } = new();

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
