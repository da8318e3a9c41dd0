namespace SquadAnalytics.Statistics;

/// <summary>Which bootstrap interval an estimate carries.</summary>
public enum BootstrapInterval
{
    /// <summary>Bias-corrected and accelerated: percentiles shifted for bias and for a spread that changes with the level. The default.</summary>
    BiasCorrectedAccelerated,

    /// <summary>Percentiles of the resampled statistic.</summary>
    Percentile,

    /// <summary>Percentiles mirrored at the estimate.</summary>
    Basic,

    /// <summary>Estimate less bias, plus or minus a normal quantile of the bootstrap standard errors.</summary>
    Normal,
}
