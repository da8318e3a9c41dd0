namespace SquadAnalytics.Statistics;

/// <summary>What a profiled parameter of a mixed model is.</summary>
public enum ProfiledKind
{
    /// <summary>A fixed effect.</summary>
    FixedEffect,

    /// <summary>A standard deviation between groups.</summary>
    RandomStandardDeviation,

    /// <summary>A correlation of two random coefficients.</summary>
    RandomCorrelation,

    /// <summary>The residual standard deviation.</summary>
    ResidualStandardDeviation,
}
