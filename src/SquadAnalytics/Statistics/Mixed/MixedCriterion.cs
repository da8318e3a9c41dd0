namespace SquadAnalytics.Statistics;

/// <summary>What a mixed model maximises.</summary>
public enum MixedCriterion
{
    /// <summary>Restricted maximum likelihood: variances are corrected for the estimated fixed effects. The default; compare only models with equal fixed effects.</summary>
    Reml,

    /// <summary>Maximum likelihood: for likelihood ratio tests and for profile limits.</summary>
    MaximumLikelihood,
}
