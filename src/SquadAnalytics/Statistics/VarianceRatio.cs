namespace SquadAnalytics.Statistics;

/// <summary>Ratio of two variances, compared over reference group, with its F test.</summary>
/// <param name="Ratio">F, the ratio of the variances (n - 1).</param>
/// <param name="NumeratorDf">Degrees of freedom of the compared group.</param>
/// <param name="DenominatorDf">Degrees of freedom of the reference group.</param>
/// <remarks>Assumes normal numbers, and is sensitive to departures from that. Source: Snedecor's F, textbook.</remarks>
public sealed record VarianceRatio(double Ratio, int NumeratorDf, int DenominatorDf)
{
    /// <summary>Two-sided p-value of equal variances.</summary>
    public double PValue => Math.Min(1, 2 * Math.Min(FDistribution.Cdf(Ratio, NumeratorDf, DenominatorDf), FDistribution.UpperTail(Ratio, NumeratorDf, DenominatorDf)));

    /// <summary>Interval of the true ratio.</summary>
    public Interval Interval(ConfidenceLevel level) => new(
        Ratio / FDistribution.UpperQuantile(level.Alpha / 2, NumeratorDf, DenominatorDf),
        Ratio / FDistribution.Quantile(level.Alpha / 2, NumeratorDf, DenominatorDf),
        level);

    /// <summary>Compares two groups.</summary>
    /// <remarks>Source: the F distribution of a ratio of variances, textbook.</remarks>
    /// <returns>The ratio, or <see cref="Refusal.TooFewObservations"/> below two numbers in a group, or <see cref="Refusal.ZeroVariance"/> where a group has no scatter.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<VarianceRatio> Fit(IReadOnlyList<double> reference, IReadOnlyList<double> compared)
    {
        var fewest = Math.Min(Numbers.Of(reference, 0).Length, Numbers.Of(compared, 0).Length);
        if (fewest < 2) return new NotEstimable("the ratio of variances", Refusal.TooFewObservations, 2, fewest, "numbers in each group");
        var (first, second) = (SampleMoments.Of(reference), SampleMoments.Of(compared));
        if (first.Variance <= 0 || second.Variance <= 0) return new NotEstimable("the ratio of variances", Refusal.ZeroVariance, "numbers that vary in both groups", "a group all the same");
        return new VarianceRatio(second.Variance / first.Variance, second.Count - 1, first.Count - 1);
    }
}
