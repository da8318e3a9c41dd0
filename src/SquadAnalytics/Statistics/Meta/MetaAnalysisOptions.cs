namespace SquadAnalytics.Statistics;

/// <summary>Settings of <see cref="MetaAnalysis.Fit"/>; every default is visible here and echoed in the result.</summary>
public sealed record MetaAnalysisOptions
{
    /// <summary>Estimator of τ²; REML by default.</summary>
    public BetweenVarianceEstimator Estimator { get; init; } = BetweenVarianceEstimator.Reml;

    /// <summary>Whether the mean's interval uses Knapp and Hartung's standard error with t on k - 1 df (the default) or the normal one.</summary>
    public bool KnappHartung { get; init; } = true;

    /// <summary>Level of all intervals; 90 % by default.</summary>
    public ConfidenceLevel ConfidenceLevel { get; init; }

    /// <summary>Unit of the effects.</summary>
    public Unit Unit { get; init; }
}
