namespace SquadAnalytics.Statistics;

/// <summary>All pairs of several groups, with p-values and intervals adjusted for their number.</summary>
public static class PairwiseComparisons
{
    /// <summary>The number of pairs grows with the square of the groups.</summary>
    internal const int MostGroups = 100;

    /// <summary>Compares the means of all pairs of groups on the pooled within-group variance.</summary>
    /// <remarks>Difference of means second minus first, SE s √(1/n_1 + 1/n_2), s the residual SD within groups with observations - groups degrees of freedom; in the
    /// unit of the values. Assumes independent normal values with one scatter in all groups. Source: Tukey (1953) and Kramer (1956), Biometrics 12:307-310, for the range (from
    /// memory); Holm (1979) and Bonferroni otherwise.</remarks>
    /// <param name="values">The observations.</param>
    /// <param name="groups">The group of each.</param>
    /// <param name="adjustment">How the number of pairs is allowed for.</param>
    /// <param name="level">Confidence level of all intervals together (of each one where the adjustment has none).</param>
    /// <returns>The comparisons, first group with all others first, or the refusal of <see cref="OneWayAnova.Fit"/>, <see cref="Refusal.ZeroVariance"/> without scatter within the groups, <see cref="Refusal.TooManyObservations"/> above 100 groups.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<IReadOnlyList<PairwiseComparison>> OfGroups(IReadOnlyList<double> values, IReadOnlyList<string> groups, PairwiseAdjustment adjustment, ConfidenceLevel level) =>
        OneWayAnova.Fit(values, groups).Match<Answer<IReadOnlyList<PairwiseComparison>>>(
            anova =>
            {
                if (anova.Groups.Count > MostGroups) return NotEstimable.TooMany("the comparison of groups", MostGroups, anova.Groups.Count, "groups");
                if (anova.ResidualStandardDeviation == 0) return new NotEstimable("the comparison of groups", Refusal.ZeroVariance, "numbers that vary within the groups", "none");
                TEstimate Difference(GroupSummary first, GroupSummary second) => new(
                    $"{second.Name} - {first.Name}",
                    second.Mean - first.Mean,
                    anova.ResidualStandardDeviation * Math.Sqrt(1.0 / first.Count + 1.0 / second.Count),
                    anova.Within.DegreesOfFreedom);
                var pairs = Pairs(anova.Groups).ToArray();
                return new(Adjusted([.. pairs.Select(pair => (pair.First.Name, pair.Second.Name, Difference(pair.First, pair.Second)))], anova.Groups.Count, adjustment, level));
            },
            refusal => refusal);

    /// <summary>All pairs of a list, in order.</summary>
    internal static IEnumerable<(T First, T Second)> Pairs<T>(IReadOnlyList<T> items) =>
        from i in Enumerable.Range(0, items.Count) from j in Enumerable.Range(i + 1, items.Count - i - 1) select (items[i], items[j]);

    /// <summary>Comparisons from differences whose standard errors are known.</summary>
    internal static IReadOnlyList<PairwiseComparison> Adjusted((string First, string Second, TEstimate Difference)[] pairs, int groups, PairwiseAdjustment adjustment, ConfidenceLevel level)
    {
        double[] raw = [.. pairs.Select(pair => pair.Difference.PValue!.Value)];
        var adjusted = adjustment switch
        {
            PairwiseAdjustment.None => raw,
            PairwiseAdjustment.Tukey => [.. pairs.Select(pair => TukeyPValue(pair.Difference, groups))],
            PairwiseAdjustment.Bonferroni => MultipleTesting.Bonferroni(raw),
            PairwiseAdjustment.Holm => MultipleTesting.Holm(raw),
            PairwiseAdjustment.BenjaminiHochberg => MultipleTesting.BenjaminiHochberg(raw),
            _ => throw new ArgumentOutOfRangeException(nameof(adjustment), adjustment, "Not an adjustment of this library."),
        };
        var factor = Factor(pairs[0].Difference.DegreesOfFreedom, pairs.Length, groups, adjustment, level);
        PairwiseComparison Make((string First, string Second, TEstimate Difference) pair, int place)
        {
            var (value, reach) = (pair.Difference.Value, factor * pair.Difference.StandardError);
            return new PairwiseComparison(pair.First, pair.Second, pair.Difference, adjusted[place], new Interval(value - reach, value + reach, level), adjustment);
        }

        return [.. pairs.Select(Make)];
    }

    private static double TukeyPValue(TEstimate difference, int groups) =>
        StudentizedRangeDistribution.UpperTail(Math.Sqrt(2) * Math.Abs(difference.T!.Value), groups, difference.DegreesOfFreedom);

    private static double Factor(double degreesOfFreedom, int pairs, int groups, PairwiseAdjustment adjustment, ConfidenceLevel level) => adjustment switch
    {
        PairwiseAdjustment.Tukey => StudentizedRangeDistribution.UpperQuantile(level.Alpha, groups, degreesOfFreedom) / Math.Sqrt(2),
        PairwiseAdjustment.Bonferroni or PairwiseAdjustment.Holm => StudentTDistribution.UpperQuantile(level.Alpha / (2 * pairs), degreesOfFreedom),
        _ => StudentTDistribution.TwoSidedFactor(level, degreesOfFreedom),
    };
}
