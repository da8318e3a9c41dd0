namespace SquadAnalytics.Statistics;

/// <summary>How the variance between true effects, τ², is estimated.</summary>
public enum BetweenVarianceEstimator
{
    /// <summary>Restricted maximum likelihood; the default.</summary>
    Reml,

    /// <summary>Maximum likelihood; too small on average with few effects.</summary>
    MaximumLikelihood,

    /// <summary>DerSimonian and Laird's moment estimator: from Q with the error variances alone.</summary>
    DerSimonianLaird,

    /// <summary>Paule and Mandel's: the τ² at which the weighted sum of squares equals its degrees of freedom.</summary>
    PauleMandel,

    /// <summary>None: all true effects are taken to be equal, τ² = 0.</summary>
    EqualEffects,
}
