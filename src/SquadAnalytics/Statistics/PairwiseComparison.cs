namespace SquadAnalytics.Statistics;

/// <summary>The difference of two of several groups, second minus first.</summary>
/// <param name="First">Name of the group that is subtracted.</param>
/// <param name="Second">Name of the other group.</param>
/// <param name="Difference">The difference with its unadjusted standard error.</param>
/// <param name="AdjustedPValue">Two-sided p-value after the adjustment.</param>
/// <param name="Interval">Interval after the adjustment.</param>
/// <param name="Adjustment">The adjustment.</param>
public sealed record PairwiseComparison(string First, string Second, TEstimate Difference, double AdjustedPValue, Interval Interval, PairwiseAdjustment Adjustment)
{
    /// <summary>The pair, its difference and adjusted p.</summary>
    public override string ToString() => FormattableString.Invariant($"{Second} - {First}: {Difference.Value:G5}, {Interval}, adjusted p {AdjustedPValue:G3}");
}
