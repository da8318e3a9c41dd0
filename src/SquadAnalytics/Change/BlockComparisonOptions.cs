using SquadAnalytics.Internals;

namespace SquadAnalytics.Change;

/// <summary>Options of the comparisons of two training blocks.</summary>
public sealed record BlockComparisonOptions
{
    private readonly int _testsPerBlock = 2;

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Eligible tests that an athlete needs in each block; 1 or more, 2 by default.</summary>
    public int TestsPerBlock
    {
        get => _testsPerBlock;
        init => _testsPerBlock = Require.AtLeast(1, value, nameof(TestsPerBlock));
    }

    /// <summary>Which sessions to use. Familiarisation is counted from each athlete's first session ever.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
