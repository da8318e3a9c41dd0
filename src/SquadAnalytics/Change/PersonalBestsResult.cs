namespace SquadAnalytics.Change;

/// <summary>One athlete's bests in the order in which they came.</summary>
public sealed record PersonalBestsResult
{
    /// <summary>The athlete's id.</summary>
    public required string AthleteId { get; init; }

    /// <summary>The bests, the first test included.</summary>
    public required IReadOnlyList<PersonalBest> Bests { get; init; }

    /// <summary>The noise they are held against.</summary>
    public required Estimate TypicalError { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The best so far.</summary>
    public PersonalBest Current => Bests[^1];

    /// <summary>The best so far and how many there were.</summary>
    public override string ToString() => $"{AthleteId}: {Current} ({Bests.Count} bests)";
}
