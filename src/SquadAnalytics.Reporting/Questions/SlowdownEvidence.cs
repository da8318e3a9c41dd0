using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>What was computed to answer why a boxer slows within the test. Every part may be a refusal; the findings then say so.</summary>
public sealed record SlowdownEvidence
{
    /// <summary>The athlete as labelled in this report.</summary>
    public required string Athlete { get; init; }

    /// <summary>The late slow-down after the set that was named beforehand.</summary>
    public required Answer<LateSlowdownResult> Named { get; init; }

    /// <summary>The late slow-down after the set that was found by looking, the search charged.</summary>
    public required Answer<LateSlowdownResult> Searched { get; init; }

    /// <summary>Where the slow-down arises.</summary>
    public required Answer<StationSharesResult> Stations { get; init; }

    /// <summary>Work and rest of the latest test.</summary>
    public required Answer<WorkAndRestResult> Rest { get; init; }

    /// <summary>Fatigue indices of the latest test.</summary>
    public required Answer<FatigueIndicesResult> Indices { get; init; }

    /// <summary>The latest total against the tests before.</summary>
    public required Answer<AthleteChangeResult> Change { get; init; }

    /// <summary>The candidate explanations side by side; null where they were not asked for.</summary>
    public Answer<ExplanationsResult>? Explanations { get; init; }

    /// <summary>What came before the latest test.</summary>
    public required TestContextResult Context { get; init; }

    /// <summary>How noisy the session total is.</summary>
    public required Answer<TypicalErrorResult> Noise { get; init; }

    /// <summary>How numbers are written.</summary>
    public required NumberFormat Format { get; init; }
}
