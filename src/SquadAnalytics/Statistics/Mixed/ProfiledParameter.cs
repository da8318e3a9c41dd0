namespace SquadAnalytics.Statistics;

/// <summary>One parameter of a mixed model with its profile likelihood limits.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Term">Name of the random term; null for fixed effects and the residual.</param>
/// <param name="Column">Name of the column; of the response for the residual.</param>
/// <param name="OtherColumn">Name of the second column of a correlation, or null.</param>
/// <param name="Estimate">The maximum likelihood estimate with its limits.</param>
public sealed record ProfiledParameter(ProfiledKind Kind, string? Term, string Column, string? OtherColumn, Estimate Estimate)
{
    /// <summary>The parameter with its limits.</summary>
    public override string ToString() => Kind switch
    {
        ProfiledKind.RandomStandardDeviation => $"SD of {Column} between {Term}: {Estimate}",
        ProfiledKind.RandomCorrelation => $"Correlation of {Column} and {OtherColumn} between {Term}: {Estimate}",
        ProfiledKind.ResidualStandardDeviation => $"Residual SD: {Estimate}",
        _ => $"{Column}: {Estimate}",
    };
}
