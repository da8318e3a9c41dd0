namespace SquadAnalytics.Import;

/// <summary>What an import found. Nothing is stored by it.</summary>
public sealed record ImportResult
{
    /// <summary>Sessions that are new, in the order of the sources.</summary>
    public required IReadOnlyList<Session> NewSessions { get; init; }

    /// <summary>Sessions of the squad that the sources complete: same id, the sets recorded before unchanged, more sets recorded; or replaced by a person's answer.</summary>
    public required IReadOnlyList<Session> ChangedSessions { get; init; }

    /// <summary>Athletes who are not in the squad.</summary>
    public required IReadOnlyList<Athlete> NewAthletes { get; init; }

    /// <summary>Athletes of the squad with a spelling that a person confirmed as theirs.</summary>
    public required IReadOnlyList<Athlete> ChangedAthletes { get; init; }

    /// <summary>Protocols that are not in the squad; only where there is no squad to match against.</summary>
    public required IReadOnlyList<Protocol> NewProtocols { get; init; }

    /// <summary>What a person has to answer.</summary>
    public required IReadOnlyList<ImportDecision> Decisions { get; init; }

    /// <summary>The account of the rows.</summary>
    public required ImportReport Report { get; init; }

    /// <summary>New and changed sessions.</summary>
    public IReadOnlyList<Session> Sessions => [.. NewSessions, .. ChangedSessions];

    /// <summary>The account of the rows in one sentence.</summary>
    public override string ToString() => Report.ToString();
}
