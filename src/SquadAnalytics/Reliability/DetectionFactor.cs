namespace SquadAnalytics.Reliability;

/// <summary>The factor q of the minimal detectable change q √2 TE.</summary>
public enum DetectionFactor
{
    /// <summary>The t quantile with the degrees of freedom of the typical error, because that is itself estimated (default).</summary>
    StudentT,

    /// <summary>The rounded normal quantile in common use: 1.96 at 95 %, 1.645 at 90 %; the exact one at other levels.</summary>
    Conventional,

    /// <summary>The exact normal quantile.</summary>
    Normal,
}
