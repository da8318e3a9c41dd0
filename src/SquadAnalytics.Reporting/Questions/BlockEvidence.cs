using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>What was computed to compare two training blocks. Every answer may be a refusal; the findings then say so.</summary>
public sealed record BlockEvidence
{
    /// <summary>The squad.</summary>
    public required Squad Squad { get; init; }

    /// <summary>The two blocks.</summary>
    public required BlockPair Pair { get; init; }

    /// <summary>What else differed, counted.</summary>
    public required Answer<BlockCircumstancesResult> Facts { get; init; }

    /// <summary>The same athletes in both blocks: the primary comparison.</summary>
    public required Answer<BlockComparisonResult> Comparison { get; init; }

    /// <summary>The mixed model of all athletes: the second opinion.</summary>
    public required Answer<BlockModelResult> Model { get; init; }

    /// <summary>Jump beyond the season's trend, from the squad's weeks compared within athletes.</summary>
    public required Answer<InterruptedSeriesResult> Series { get; init; }

    /// <summary>Each athlete's own difference.</summary>
    public required Answer<SquadChangesResult> Athletes { get; init; }

    /// <summary>How many more tests would settle the smallest worthwhile difference.</summary>
    public required Answer<MoreTestsResult> MoreTests { get; init; }

    /// <summary>The difference between two groups side by side.</summary>
    public required Answer<GroupDifferenceResult> Groups { get; init; }

    /// <summary>The smallest worthwhile change.</summary>
    public required SmallestWorthwhileChange Worthwhile { get; init; }

    /// <summary>The noise of one session total.</summary>
    public required Answer<TypicalErrorResult> Noise { get; init; }

    /// <summary>How numbers are written.</summary>
    public required NumberFormat Format { get; init; }
}
