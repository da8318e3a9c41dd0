using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>What was computed to plan tests. Every answer may be a refusal; the findings then say so.</summary>
public sealed record PlanEvidence
{
    /// <summary>The athlete as labelled in this report.</summary>
    public required string Athlete { get; init; }

    /// <summary>The noise of one session total.</summary>
    public required Answer<TypicalErrorResult> Noise { get; init; }

    /// <summary>The smallest worthwhile change.</summary>
    public required SmallestWorthwhileChange Worthwhile { get; init; }

    /// <summary>A worthwhile change of one athlete, by further tests.</summary>
    public required Answer<MoreTestsResult> Change { get; init; }

    /// <summary>The same change with as many tests before as after.</summary>
    public required Answer<MoreTestsResult> ChangeOfEqualSides { get; init; }

    /// <summary>Earlier tests of the athlete that the change is held against.</summary>
    public required int BaselineTests { get; init; }

    /// <summary>A late break of the athlete, by further tests.</summary>
    public required Answer<MoreTestsResult> Break { get; init; }

    /// <summary>The break as a share of a set.</summary>
    public required Percent BreakSize { get; init; }

    /// <summary>Eligible tests of the athlete so far.</summary>
    public required IReadOnlyList<Session> TestsSoFar { get; init; }

    /// <summary>A worthwhile difference between two blocks of the squad, by tests in each block.</summary>
    public required Answer<MoreTestsResult> Blocks { get; init; }

    /// <summary>The smallest change of one athlete that the planned further tests show.</summary>
    public required Answer<Estimate> SmallestChange { get; init; }

    /// <summary>The smallest difference that the planned block shows.</summary>
    public required Answer<Estimate> SmallestBlockDifference { get; init; }

    /// <summary>Further tests of one athlete that are planned.</summary>
    public required int FurtherTests { get; init; }

    /// <summary>Athletes who will do both blocks.</summary>
    public required int Athletes { get; init; }

    /// <summary>Tests of each athlete in each block.</summary>
    public required int TestsPerBlock { get; init; }

    /// <summary>How numbers are written.</summary>
    public required NumberFormat Format { get; init; }
}
