namespace SquadAnalytics.Change;

/// <summary>A descriptive line through one athlete's season.</summary>
public sealed record SeasonLineResult
{
    /// <summary>The athlete's id.</summary>
    public required string AthleteId { get; init; }

    /// <summary>One point per date with a test; weeks without a test have none.</summary>
    public required IReadOnlyList<SeasonPoint> Points { get; init; }

    /// <summary>λ that was used.</summary>
    public required double Lambda { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>First and last value of the line.</summary>
    public override string ToString() => FormattableString.Invariant($"{AthleteId}: line from {Points[0].LineSeconds:0.0} to {Points[^1].LineSeconds:0.0} s over {Points.Count} dates");
}
