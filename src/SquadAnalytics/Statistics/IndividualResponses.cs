namespace SquadAnalytics.Statistics;

/// <summary>Standard deviation of individual responses: how much more the changes scatter in one group than in its comparison group.</summary>
/// <param name="StandardDeviation">sign(v) √|v| of v = s1² - s0², in the changes' unit; negative where the comparison group scatters more.</param>
/// <param name="Interval">The same of v ± z SE(v), z the normal quantile, SE(v) = √(2 (s1⁴/(n1 - 1) + s0⁴/(n0 - 1))).</param>
/// <param name="VarianceStandardError">SE(v).</param>
/// <remarks>A negative value means: no sign that athletes respond differently. Hopkins (2015), J Appl Physiol 118:1444-1446 (from memory).</remarks>
public sealed record IndividualResponses(double StandardDeviation, Interval Interval, double VarianceStandardError)
{
    /// <summary>Compares the scatter of changes.</summary>
    /// <remarks>Assumes equal noise in both groups and independent athletes.</remarks>
    /// <param name="comparisonChanges">Changes of the comparison group.</param>
    /// <param name="changes">Changes of the group whose responses are looked at.</param>
    /// <param name="level">Confidence level.</param>
    /// <returns>The standard deviation, or <see cref="Refusal.TooFewObservations"/> below two changes in a group.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<IndividualResponses> Fit(IReadOnlyList<double> comparisonChanges, IReadOnlyList<double> changes, ConfidenceLevel level)
    {
        var fewest = Math.Min(Numbers.Of(comparisonChanges, 0).Length, Numbers.Of(changes, 0).Length);
        if (fewest < 2) return new NotEstimable("the SD of individual responses", Refusal.TooFewObservations, 2, fewest, "changes in each group");
        var (control, own) = (SampleMoments.Of(comparisonChanges), SampleMoments.Of(changes));
        var variance = own.Variance - control.Variance;
        var error = Math.Sqrt(2 * (own.Variance * own.Variance / (own.Count - 1) + control.Variance * control.Variance / (control.Count - 1)));
        var reach = NormalDistribution.UpperQuantile(level.Alpha / 2) * error;
        return new IndividualResponses(SignedRoot(variance), new Interval(SignedRoot(variance - reach), SignedRoot(variance + reach), level), error);
    }

    private static double SignedRoot(double variance) => Math.Sign(variance) * Math.Sqrt(Math.Abs(variance));
}
