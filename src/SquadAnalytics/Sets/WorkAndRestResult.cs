namespace SquadAnalytics.Sets;

/// <summary>Work and rest of one session on the rolling clock.</summary>
public sealed record WorkAndRestResult
{
    /// <summary>The session described.</summary>
    public required Session Session { get; init; }

    /// <summary>Start interval T.</summary>
    public required Seconds StartInterval { get; init; }

    /// <summary>The sets in order, up to the first without a time or the one that ended the test.</summary>
    public required IReadOnlyList<ClockSet> Sets { get; init; }

    /// <summary>Work time over rest, Σ t / Σ r over all sets but the last; a plain ratio.</summary>
    public required Answer<Estimate> WorkToRest { get; init; }

    /// <summary>Density: session total over the finish of the last set; a plain ratio.</summary>
    public required Answer<Estimate> Density { get; init; }

    /// <summary>Whether a set left no rest at all.</summary>
    public bool HasNoRest => Sets.Any(set => set.Rest?.Value == 0);

    /// <summary>Rest after each set and the two ratios.</summary>
    public override string ToString() =>
        $"{Session.Date:yyyy-MM-dd}: rest {string.Join(", ", Sets.Where(set => set.Rest is not null).Select(set => set.Rest))}; work to rest {WorkToRest}; density {Density}";
}
