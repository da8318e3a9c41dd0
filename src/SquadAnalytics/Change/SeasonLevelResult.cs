namespace SquadAnalytics.Change;

/// <summary>One athlete's season as a level that drifts from week to week, seen through the noise of the test.</summary>
public sealed record SeasonLevelResult
{
    /// <summary>The athlete's id.</summary>
    public required string AthleteId { get; init; }

    /// <summary>One point per week from the first test to the last, weeks without a test included.</summary>
    public required IReadOnlyList<SeasonLevelPoint> Points { get; init; }

    /// <summary>Standard deviation of a test about the level, σ_ε, in seconds, of the best fit; 0 where a level that follows every test fits best.</summary>
    public required Estimate Noise { get; init; }

    /// <summary>Standard deviation of the level's step from one week to the next, σ_η, in seconds, of the best fit; 0 where a constant level fits best.</summary>
    public required Estimate WeeklyDrift { get; init; }

    /// <summary>Weight of a new test once the filter of the best fit has settled, λ: what the smooth line's λ would be for this athlete.</summary>
    public required double SteadyWeight { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The level of the last week.</summary>
    public Estimate Latest => Points[^1].Level;

    /// <summary>Noise, drift and latest level.</summary>
    public override string ToString() => FormattableString.Invariant($"{AthleteId}: level {Latest}, noise SD {Noise.Value:0.00} s, weekly drift SD {WeeklyDrift.Value:0.00} s");
}
