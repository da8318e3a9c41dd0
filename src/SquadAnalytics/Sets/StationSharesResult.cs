namespace SquadAnalytics.Sets;

/// <summary>Where the slow-down arises, station by station.</summary>
public sealed record StationSharesResult
{
    /// <summary>The set b: sets 1 to b are early, the others late.</summary>
    public required int AfterSet { get; init; }

    /// <summary>Slow-down of the whole set, late minus early, in seconds.</summary>
    public required Estimate Slowdown { get; init; }

    /// <summary>One row per station in circuit order, then the transitions.</summary>
    public required IReadOnlyList<StationShare> Rows { get; init; }

    /// <summary>The sessions that qualify by date and protocol.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>Ids of the sessions used: those with all station times.</summary>
    public required IReadOnlyList<string> SessionIds { get; init; }

    /// <summary>How many qualifying sessions lack station times.</summary>
    public required int WithoutStationsLeftOut { get; init; }

    /// <summary>How many sessions were left out because the splits of a set exceed its time.</summary>
    public required int ContradictoryLeftOut { get; init; }

    /// <summary>The level of the intervals.</summary>
    public required ConfidenceLevel Level { get; init; }

    /// <summary>How to read the pattern: what times can and cannot tell apart.</summary>
    public IReadOnlyList<string> ReadingRules
    {
        get
        {
            List<string> rules = [];
            if (Concentrated.Any(row => row.Station is not null))
                rules.Add("Concentrated in one station: local muscular fatigue, technique breaking down, or a repetition standard policed late; times cannot separate them. Count repetition quality and no-repetitions, film it, or test that station fresh.");
            if (Concentrated.Any(row => row.Station is null)) rules.Add("Growing transitions: walking, hesitation or set-up between stations.");
            if (rules.Count == 0) rules.Add("Spread evenly over the stations: general fatigue or a lower pace is the simpler reading.");
            return [.. rules, "Times alone do not name the cause."];
        }
    }

    /// <summary>Rows whose time grew by more than the even slowing of all stations explains, at the level asked for after Holm's adjustment.</summary>
    public IReadOnlyList<StationShare> Concentrated => [.. Rows.Where(row => row.ExcessPValue is { } p && p.Value <= Level.Alpha / 2)];

    /// <summary>The slow-down and its rows.</summary>
    public override string ToString() => $"Late minus early sets: {Slowdown}. {string.Join(". ", Rows)}";
}
