namespace SquadAnalytics.Statistics;

/// <summary>What the mean moving range of two is divided by to give a standard deviation.</summary>
public enum MovingRangeDivisor
{
    /// <summary>1.128, as in printed tables; the default.</summary>
    Tabulated,

    /// <summary>2/√π, the exact expected range of two standard normals.</summary>
    Exact,
}
