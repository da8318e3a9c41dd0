namespace SquadAnalytics.Statistics;

/// <summary>Which degrees of freedom the intervals and tests of fixed effects use. The matter is contested; the result says which was used.</summary>
/// <remarks>
/// Satterthwaite: 2v²/Var(v), v the estimated variance of the contrast, Var(v) by the delta method from the curvature of the deviance. Sources: Satterthwaite (1946), Biometrics Bulletin 2:110-114;
/// Kuznetsova et al. (2017), J Stat Softw 82(13); Kenward and Roger (1997), Biometrics 53:983-997 (all from memory).
/// </remarks>
public enum FixedEffectDegreesOfFreedom
{
    /// <summary>Satterthwaite's: matches the first two moments of the estimated variance. The default; unsafe below about six groups.</summary>
    Satterthwaite,

    /// <summary>Kenward and Roger's: as Satterthwaite's, and the standard errors are widened for the variances being estimated. REML only.</summary>
    KenwardRoger,

    /// <summary>None: normal quantiles (Wald). For large data, or to compare with software that does so.</summary>
    Normal,
}
