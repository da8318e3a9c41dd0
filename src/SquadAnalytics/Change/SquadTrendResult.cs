using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>A squad's season: how fast the session total changes for the squad, and how athletes differ. Negative slopes are faster.</summary>
public sealed record SquadTrendResult
{
    /// <summary>Slope of the squad, β1, in seconds per week.</summary>
    public required Estimate Slope { get; init; }

    /// <summary>Slope of the squad from the same model of the logarithms, in percent per week, or what that model refuses.</summary>
    public required Answer<Estimate> RelativeSlope { get; init; }

    /// <summary>Mean of the athletes' own least-squares slopes with a plain t interval over athletes, in seconds per week: the second opinion on the contested degrees of freedom. Refused below 6 athletes with 3 tests.</summary>
    public required Answer<Estimate> MeanOfOwnSlopes { get; init; }

    /// <summary>Level of the squad on <see cref="LevelOn"/>, β0, in seconds.</summary>
    public required Estimate Level { get; init; }

    /// <summary>The date on which levels are read.</summary>
    public required DateOnly LevelOn { get; init; }

    /// <summary>Standard deviation between athletes of the level, in seconds.</summary>
    public required Estimate LevelSpread { get; init; }

    /// <summary>Standard deviation between athletes of the slope, in seconds per week; refused where too few athletes have 3 tests, or where slopes showed no variance.</summary>
    public required Answer<Estimate> SlopeSpread { get; init; }

    /// <summary>Correlation between athletes of level and slope; refused where the model has none.</summary>
    public required Answer<Estimate> Correlation { get; init; }

    /// <summary>Standard deviation of a test about its athlete's line, in seconds.</summary>
    public required Estimate ResidualStandardDeviation { get; init; }

    /// <summary>How athletes differ in the model that was fitted in the end.</summary>
    public required SquadTrendForm Form { get; init; }

    /// <summary>One row per athlete, by id.</summary>
    public required IReadOnlyList<AthleteTrend> Athletes { get; init; }

    /// <summary>Weeks from the first eligible test to the last.</summary>
    public required double SpanWeeks { get; init; }

    /// <summary>The model as it was fitted.</summary>
    public required MixedFit Model { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public IReadOnlyList<string> Notes => Slope.Notes;

    /// <summary>The row of an athlete.</summary>
    /// <exception cref="ArgumentException">The athlete has no eligible test.</exception>
    public AthleteTrend Athlete(string athleteId) =>
        Athletes.FirstOrDefault(athlete => athlete.AthleteId == athleteId) ?? throw new ArgumentException($"Athlete '{athleteId}' has no eligible test in this season.", nameof(athleteId));

    /// <summary>The squad's slope and what it rests on.</summary>
    public override string ToString() => $"squad: {Slope} ({Athletes.Count} athletes, {Slope.Observations} tests; {Form.Words()})";
}
