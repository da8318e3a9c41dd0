namespace SquadAnalytics.Load;

/// <summary>Training load of one week of one athlete, in arbitrary units.</summary>
public sealed record WeeklyLoadResult
{
    /// <summary>First day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Load of the seven days in order; 0 on confirmed rest days.</summary>
    public required IReadOnlyList<double> DailyLoads { get; init; }

    /// <summary>Sum of the seven days.</summary>
    public required Estimate Sum { get; init; }

    /// <summary>Mean daily load over its standard deviation, or a refusal where all days are alike.</summary>
    public required Answer<Estimate> Monotony { get; init; }

    /// <summary>Sum times monotony, or its refusal.</summary>
    public required Answer<Estimate> Strain { get; init; }

    /// <summary>How to read it.</summary>
    public IReadOnlyList<string> Notes => Sum.Notes;

    /// <summary>First day and sum.</summary>
    public override string ToString() => FormattableString.Invariant($"week from {From:yyyy-MM-dd}: {Sum}, monotony {Monotony}, strain {Strain}");
}
