namespace SquadAnalytics.Sets;

/// <summary>How much of a slow-down the rolling clock could itself explain.</summary>
public sealed record RecoveryResult
{
    /// <summary>The fitted parameters.</summary>
    public required RecoveryParameters Parameters { get; init; }

    /// <summary>Recovery time constant τ with its confidence set, in seconds.</summary>
    public required Estimate TimeConstant { get; init; }

    /// <summary>What the clock costs over a session, against a fixed rest of T - β, in seconds; a model prediction.</summary>
    public required Estimate ClockPenalty { get; init; }

    /// <summary>Feedback gain of each set but the last: seconds in the next set per extra second in this one.</summary>
    public required IReadOnlyList<Estimate> FeedbackGains { get; init; }

    /// <summary>Residual standard deviation, in seconds.</summary>
    public required Estimate Residual { get; init; }

    /// <summary>The sessions used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What the fit cannot tell.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Parameters and penalty.</summary>
    public override string ToString() => $"{Parameters}; the clock costs {ClockPenalty} per session";
}
