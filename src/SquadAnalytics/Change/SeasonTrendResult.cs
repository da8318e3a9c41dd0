namespace SquadAnalytics.Change;

/// <summary>The straight trend of one athlete's season; a negative slope is faster.</summary>
public sealed record SeasonTrendResult
{
    /// <summary>The athlete's id.</summary>
    public required string AthleteId { get; init; }

    /// <summary>Least-squares slope in seconds per week.</summary>
    public required Estimate Slope { get; init; }

    /// <summary>Slope of the logarithms, as percent per week.</summary>
    public required Estimate RelativeSlope { get; init; }

    /// <summary>The same slope with a Newey-West standard error, which allows for tests that resemble their neighbours.</summary>
    public required Estimate SerialSlope { get; init; }

    /// <summary>Theil-Sen slope in seconds per week with its interval from Kendall ranks, or a refusal below 8 tests.</summary>
    public required Answer<Estimate> RobustSlope { get; init; }

    /// <summary>Standard deviation of the tests about the line.</summary>
    public required Estimate ResidualStandardDeviation { get; init; }

    /// <summary>Correlation of neighbouring residuals, or a refusal where all residuals are 0.</summary>
    public required Answer<Estimate> SerialCorrelation { get; init; }

    /// <summary>The tests, each with the line.</summary>
    public required IReadOnlyList<SeasonPoint> Points { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public IReadOnlyList<string> Notes => Slope.Notes;

    /// <summary>The slope and its tests.</summary>
    public override string ToString() => $"{AthleteId}: {Slope} over {Points.Count} tests";
}
