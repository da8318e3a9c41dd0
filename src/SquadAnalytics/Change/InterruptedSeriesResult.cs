namespace SquadAnalytics.Change;

/// <summary>A series of totals before and after a date: jump and change of slope. Negative = faster.</summary>
public sealed record InterruptedSeriesResult
{
    /// <summary>Date of the first test of the second segment, t0.</summary>
    public required DateOnly From { get; init; }

    /// <summary>Slope before, b1, in seconds per week.</summary>
    public required Estimate SlopeBefore { get; init; }

    /// <summary>Jump at t0, b2, in seconds.</summary>
    public required Estimate LevelChange { get; init; }

    /// <summary>Change of the slope, b3, in seconds per week.</summary>
    public required Estimate SlopeChange { get; init; }

    /// <summary>Difference at the last test from the line before carried on: b2 + b3 (t - t0), in seconds; plain least squares, tests taken as independent.</summary>
    public required Estimate EffectAtEnd { get; init; }

    /// <summary>b1 with a Newey-West standard error.</summary>
    public required Estimate SerialSlopeBefore { get; init; }

    /// <summary>b2 with a Newey-West standard error.</summary>
    public required Estimate SerialLevelChange { get; init; }

    /// <summary>b3 with a Newey-West standard error.</summary>
    public required Estimate SerialSlopeChange { get; init; }

    /// <summary>Standard deviation about the two lines, in seconds, with χ² limits.</summary>
    public required Estimate ResidualStandardDeviation { get; init; }

    /// <summary>Durbin-Watson statistic, about 2 for independent tests; null where all residuals are 0.</summary>
    public required double? DurbinWatson { get; init; }

    /// <summary>Lag-1 correlation of the residuals; null where all are 0.</summary>
    public required double? SerialCorrelation { get; init; }

    /// <summary>The series with its two lines.</summary>
    public required IReadOnlyList<SeasonPoint> Points { get; init; }

    /// <summary>Whether a segment has only 5 to 7 tests, so that numbers are shown without a verdict.</summary>
    public required bool IsWithoutVerdict { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public IReadOnlyList<string> Notes => LevelChange.Notes;

    /// <summary>Jump and change of slope.</summary>
    public override string ToString() => FormattableString.Invariant($"from {From:yyyy-MM-dd}: jump {LevelChange}; slope change {SlopeChange}");
}
