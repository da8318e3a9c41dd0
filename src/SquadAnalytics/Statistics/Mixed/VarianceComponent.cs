namespace SquadAnalytics.Statistics;

/// <summary>The standard deviation between groups of one random coefficient.</summary>
/// <param name="Term">Name of the random term.</param>
/// <param name="Column">Name of the column whose coefficient varies.</param>
/// <param name="StandardDeviation">The standard deviation, in the unit of the coefficient.</param>
public sealed record VarianceComponent(string Term, string Column, Estimate StandardDeviation)
{
    /// <summary>The component with its standard deviation.</summary>
    public override string ToString() => $"SD of {Column} between {Term}: {StandardDeviation}";
}
