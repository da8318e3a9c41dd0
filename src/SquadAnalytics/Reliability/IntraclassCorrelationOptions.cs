using SquadAnalytics.Internals;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reliability;

/// <summary>Options of <see cref="IntraclassCorrelation"/>.</summary>
public sealed record IntraclassCorrelationOptions
{
    private readonly int _tests = 4;

    /// <summary>How many of the latest tests are used, k; 2 or more. Default 4.</summary>
    public int Tests
    {
        get => _tests;
        init => _tests = Require.AtLeast(2, value, nameof(Tests));
    }

    /// <summary>The measure; the session total by default.</summary>
    public SessionMeasure Measure { get; init; }

    /// <summary>What makes sessions of different athletes the same test.</summary>
    public TestGrouping Grouping { get; init; }

    /// <summary>Level of the limits; 95 % by default, as is usual for intraclass correlations.</summary>
    public ConfidenceLevel Level { get; init; } = ConfidenceLevel.NinetyFive;

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
