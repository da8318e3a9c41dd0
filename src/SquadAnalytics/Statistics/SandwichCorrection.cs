namespace SquadAnalytics.Statistics;

/// <summary>How the squared residuals of a heteroscedasticity-consistent covariance are inflated (MacKinnon &amp; White 1985, J Econometrics 29:305-325, from memory).</summary>
public enum SandwichCorrection
{
    /// <summary>e²: White's original; too small in small samples.</summary>
    HC0,

    /// <summary>e² n/(n - p).</summary>
    HC1,

    /// <summary>e² / (1 - h): unbiased under equal variances.</summary>
    HC2,

    /// <summary>e² / (1 - h)²: close to the jackknife, the safest in small samples.</summary>
    HC3,
}
