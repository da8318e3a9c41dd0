namespace SquadAnalytics.Sets;

/// <summary>Fatigue indices of one session. Positive means slower later; the session total stands beside them because a faster first set raises every index.</summary>
public sealed record FatigueIndicesResult
{
    /// <summary>The session described.</summary>
    public required Session Session { get; init; }

    /// <summary>Session total, in seconds: the primary score.</summary>
    public required Estimate Total { get; init; }

    /// <summary>Index from the extremes, 100 (worst - best) / best, in percent.</summary>
    public required Estimate Extremes { get; init; }

    /// <summary>First to last set, 100 (t_n - t_1) / t_1, in percent.</summary>
    public required Estimate FirstToLast { get; init; }

    /// <summary>Ratio of the last to the first set, t_n / t_1.</summary>
    public required Estimate LastToFirstRatio { get; init; }

    /// <summary>Percentage decrement score, 100 (W / (n best) - 1), in percent: 0 when every set equals the best.</summary>
    public required Estimate Decrement { get; init; }

    /// <summary>What even pacing alone would show, where a set noise was given.</summary>
    public NoiseFloor? NoiseFloor { get; init; }

    /// <summary>Whether the decrement exceeds what set-to-set scatter alone gives in 95 of 100 even sessions; null without a set noise.</summary>
    public bool? DecrementExceedsScatter => NoiseFloor is null ? null : Decrement.Value > NoiseFloor.DecrementLimit.Value;

    /// <summary>Total and indices in one line.</summary>
    public override string ToString() => $"{Session.Date:yyyy-MM-dd}: total {Total}; decrement {Decrement}; extremes {Extremes}; first to last {FirstToLast}";
}
