namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="BlockModel"/>.</summary>
public sealed record BlockModelOptions
{
    /// <summary>Whether athletes may differ in their change between the blocks; on by default. Without it the interval is too narrow as soon as they do.</summary>
    public bool AthletesDiffer { get; init; } = true;

    /// <summary>Whether a straight trend on weeks is taken out; off by default. With it the difference is a jump beyond the trend, because block and week nearly say the same.</summary>
    public bool WithTrend { get; init; }

    /// <summary>Degrees of freedom; Satterthwaite's by default.</summary>
    public Statistics.FixedEffectDegreesOfFreedom DegreesOfFreedom { get; init; } = Statistics.FixedEffectDegreesOfFreedom.Satterthwaite;

    /// <summary>Level of the interval; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
