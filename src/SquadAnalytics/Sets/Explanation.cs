namespace SquadAnalytics.Sets;

/// <summary>One candidate explanation of a slow-down, beside the others.</summary>
public sealed record Explanation
{
    /// <summary>The candidate.</summary>
    public required ExplanationCause Cause { get; init; }

    /// <summary>The candidate in words, with the set, station or circumstance it is about.</summary>
    public required string Name { get; init; }

    /// <summary>The estimate that speaks for or against it, the other candidates of its kind held equal; its method says what it is.</summary>
    public required Answer<Estimate> Effect { get; init; }

    /// <summary>Seconds of the slow-down, late minus early set, that it could account for if it were alone. These overlap and do not add up.</summary>
    public required Answer<Estimate> Accounts { get; init; }

    /// <summary>p-value after Holm's adjustment over all candidates that were tested, or null where the candidate is not tested.</summary>
    public required Estimate? PValue { get; init; }

    /// <summary>Where it stands.</summary>
    public required ExplanationStanding Standing { get; init; }

    /// <summary>What speaks for it.</summary>
    public required IReadOnlyList<string> Supports { get; init; }

    /// <summary>What speaks against it.</summary>
    public required IReadOnlyList<string> Contradicts { get; init; }

    /// <summary>The observation that would tell it from its neighbour.</summary>
    public required string Separates { get; init; }

    /// <summary>Name, standing and seconds.</summary>
    public override string ToString() => $"{Name}: {Standing.Words()}; could account for {Accounts}";
}
