namespace SquadAnalytics.Statistics;

/// <summary>Which degrees of freedom the intervals and tests of fixed effects use. The matter is contested; the result says which was used.</summary>
public enum FixedEffectDegreesOfFreedom
{
    /// <summary>Satterthwaite's: matches the first two moments of the estimated variance. The default; unsafe below about six groups.</summary>
    Satterthwaite,

    /// <summary>Kenward and Roger's: as Satterthwaite's, and the standard errors are widened for the variances being estimated. REML only.</summary>
    KenwardRoger,

    /// <summary>None: normal quantiles (Wald). For large data, or to compare with software that does so.</summary>
    Normal,
}
