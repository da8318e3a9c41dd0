namespace SquadAnalytics.Statistics;

/// <summary>Comparison of two least-squares fits to the same responses, of which the smaller is contained in the larger.</summary>
public static class NestedComparison
{
    /// <summary>F = ((RSS0 - RSS1) / (df0 - df1)) / (RSS1 / df1), with its p-value.</summary>
    /// <remarks>Assumes independent normal errors. Source: the F test of nested least-squares models, textbook.</remarks>
    /// <param name="smaller">The fit with fewer columns.</param>
    /// <param name="larger">The fit with more columns, all of the smaller one's among them.</param>
    /// <exception cref="ArgumentException">The observations differ in number, or the larger fit has no more columns.</exception>
    public static AnovaRow Compare(LinearFit smaller, LinearFit larger)
    {
        ArgumentNullException.ThrowIfNull(smaller);
        ArgumentNullException.ThrowIfNull(larger);
        if (smaller.Observations != larger.Observations || smaller.DegreesOfFreedom <= larger.DegreesOfFreedom)
            throw new ArgumentException("The larger fit must have the same observations and more columns.", nameof(larger));
        return AnovaRow.Tested(
            "added terms",
            smaller.DegreesOfFreedom - larger.DegreesOfFreedom,
            Math.Max(0, smaller.ResidualSumOfSquares - larger.ResidualSumOfSquares),
            larger.ResidualSumOfSquares / larger.DegreesOfFreedom,
            larger.DegreesOfFreedom);
    }
}
