namespace SquadAnalytics.Reliability;

/// <summary>How much a test done twice varies, the change between the two included.</summary>
public sealed record RepeatabilityResult
{
    /// <summary>Within-athlete standard deviation s_w, the mean change not taken out.</summary>
    public required Estimate WithinAthlete { get; init; }

    /// <summary>Coefficient of repeatability 1.96 √2 s_w: 95 of 100 pairs of tests differ by less.</summary>
    public required Estimate Coefficient { get; init; }

    /// <summary>The scatter relative to each pair's mean, in percent; refused where a mean is not above 0.</summary>
    public required Answer<Estimate> Relative { get; init; }

    /// <summary>Scatter and coefficient.</summary>
    public override string ToString() => $"Within athletes {WithinAthlete}; coefficient of repeatability {Coefficient}";
}
