namespace SquadAnalytics.Statistics;

/// <summary>How a quantile is read off a sample of n numbers. The nine rules of Hyndman &amp; Fan (1996), Am Stat 50:361-365 (from memory), with their numbers.</summary>
public enum QuantileRule
{
    /// <summary>1: the inverse of the empirical distribution function.</summary>
    EmpiricalInverse = 1,

    /// <summary>2: as 1, averaging at its jumps.</summary>
    EmpiricalInverseAveraged = 2,

    /// <summary>3: the nearest order statistic, even ones on ties.</summary>
    NearestEven = 3,

    /// <summary>4: linear interpolation of the empirical distribution function.</summary>
    EmpiricalLinear = 4,

    /// <summary>5: linear, with order statistics at (k - ½)/n.</summary>
    Midpoint = 5,

    /// <summary>6: linear, with order statistics at k/(n + 1).</summary>
    MeanPosition = 6,

    /// <summary>7: linear, with order statistics at (k - 1)/(n - 1); the default of R and of spreadsheets, and the default here.</summary>
    ModePosition = 7,

    /// <summary>8: linear, approximately median-unbiased whatever the distribution.</summary>
    MedianUnbiased = 8,

    /// <summary>9: linear, approximately unbiased for normal samples.</summary>
    NormalUnbiased = 9,
}
