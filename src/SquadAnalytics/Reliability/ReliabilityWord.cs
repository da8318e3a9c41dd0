namespace SquadAnalytics.Reliability;

/// <summary>Words for an intraclass correlation, applied to its lower limit only. Source: Koo and Li 2016, J Chiropr Med 15:155-163.</summary>
public enum ReliabilityWord
{
    /// <summary>Below 0.5.</summary>
    Poor,

    /// <summary>0.5 to 0.75.</summary>
    Moderate,

    /// <summary>0.75 to 0.9.</summary>
    Good,

    /// <summary>Above 0.9.</summary>
    Excellent,
}
