namespace SquadAnalytics.Change;

/// <summary>One athlete's change between tests, later minus earlier: negative = faster.</summary>
public sealed record AthleteChangeResult
{
    /// <summary>The athlete's id.</summary>
    public required string AthleteId { get; init; }

    /// <summary>The earlier sessions, by date.</summary>
    public required IReadOnlyList<Session> Baseline { get; init; }

    /// <summary>The later sessions, by date.</summary>
    public required IReadOnlyList<Session> Later { get; init; }

    /// <summary>The change D with its interval, in seconds or percent; its p-value is two-sided against 0.</summary>
    public required Estimate Change { get; init; }

    /// <summary>The smallest worthwhile change it was held against.</summary>
    public required SmallestWorthwhileChange Worthwhile { get; init; }

    /// <summary>The noise of one test that the interval rests on.</summary>
    public required Estimate TypicalError { get; init; }

    /// <summary>p-value of "faster by more than S": T((D + S) / SE).</summary>
    public required Estimate FasterThanWorthwhilePValue { get; init; }

    /// <summary>p-value of "no worthwhile change": the larger of two one-sided tests against ±S.</summary>
    public required Estimate EquivalencePValue { get; init; }

    /// <summary>Chances under a flat prior, or null where they were not asked for.</summary>
    public ChangeChances? Chances { get; init; }

    /// <summary>The verdict.</summary>
    public ChangeVerdict Verdict => ChangeVerdicts.Of(Change, Worthwhile);

    /// <summary>The verdict if half the smallest worthwhile change were asked for.</summary>
    public ChangeVerdict VerdictAtHalf => ChangeVerdicts.Of(Change, Worthwhile.Times(0.5));

    /// <summary>The verdict if twice the smallest worthwhile change were asked for.</summary>
    public ChangeVerdict VerdictAtDouble => ChangeVerdicts.Of(Change, Worthwhile.Times(2));

    /// <summary>Change, verdict and tests.</summary>
    public override string ToString() => $"{AthleteId}: {Change}, {Verdict.Words()} ({Baseline.Count} earlier, {Later.Count} later tests)";
}
