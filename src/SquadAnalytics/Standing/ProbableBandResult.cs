namespace SquadAnalytics.Standing;

/// <summary>The band of an athlete's latest test, with its uncertainty.</summary>
public sealed record ProbableBandResult
{
    /// <summary>The session total, in seconds, with the noise of one test as standard error.</summary>
    public required Estimate Total { get; init; }

    /// <summary>Name of the band the total falls in as it stands.</summary>
    public required string Observed { get; init; }

    /// <summary>The band that may be announced: the observed one where it is settled, otherwise the one before; null where nothing is settled yet.</summary>
    public required string? Announced { get; init; }

    /// <summary>What may be said of it.</summary>
    public required BandStanding Standing { get; init; }

    /// <summary>The probability of every band, fastest first, and of both sides outside.</summary>
    public required IReadOnlyList<BandChance> Chances { get; init; }

    /// <summary>Observed band and standing.</summary>
    public override string ToString() => $"{Total}: {Observed} ({Standing}); {string.Join(", ", Chances)}";
}
