namespace SquadAnalytics.Change;

/// <summary>One athlete's season in the model of the squad: level and slope, pulled toward the squad the more, the less the athlete's own tests say.</summary>
public sealed record AthleteTrend
{
    /// <summary>The athlete's id.</summary>
    public required string AthleteId { get; init; }

    /// <summary>Eligible tests.</summary>
    public required int Tests { get; init; }

    /// <summary>Session total on the date of the levels, in seconds, pulled toward the squad; t interval that counts the uncertainty of the squad's line and of the noise, not that of the spread between athletes.</summary>
    public required Estimate Level { get; init; }

    /// <summary>Slope in seconds per week, pulled toward the squad: posterior mean, standard deviation and interval, which count that the squad's mean and spread and the noise are not known. Refused below 3
    /// dates, and where fewer than 6 athletes have 5.</summary>
    public required Answer<Estimate> Slope { get; init; }

    /// <summary>Level minus the squad's, in seconds: the best linear unbiased prediction. Its standard error is the conditional standard deviation, with the squad's line
    /// and the variances taken as known, and no interval is built on it: it would be too narrow.</summary>
    public required Estimate LevelDeviation { get; init; }

    /// <summary>Slope minus the squad's, in seconds per week, as <see cref="LevelDeviation"/>; a refusal where the model has one slope for all.</summary>
    public required Answer<Estimate> SlopeDeviation { get; init; }

    /// <summary>Least-squares slope of the athlete's own tests alone, not pulled; refused below 5 tests, because slopes of so few tests must not be compared.</summary>
    public required Answer<Estimate> OwnSlope { get; init; }

    /// <summary>Level and slope.</summary>
    public override string ToString() => $"{AthleteId}: {Level}; {Slope}";
}
