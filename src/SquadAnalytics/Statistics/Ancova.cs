namespace SquadAnalytics.Statistics;

/// <summary>Analysis of covariance: groups compared after adjusting for a baseline, response = a + θ baseline + group + e.</summary>
/// <remarks>
/// Adjusted means are expected responses at the overall mean baseline. Assumes the same slope θ in every group. Vickers &amp; Altman (2001),
/// BMJ 323:1123-1124. Where groups were not randomised the differences are differences, not effects (Lord's paradox).
/// </remarks>
public sealed record Ancova
{
    private readonly IReadOnlyList<string> _names;

    private Ancova(LinearFit fit, IReadOnlyList<string> names, double mean)
    {
        (Fit, _names, BaselineMean) = (fit, names, mean);
        AdjustedMeans = [.. names.Select((name, i) => fit.Contrast(name, Weights(i)).GetOrThrow())];
    }

    /// <summary>The least-squares fit: intercept, <c>baseline</c>, and <c>group: name</c> against the first group.</summary>
    public LinearFit Fit { get; }

    /// <summary>Mean baseline of all observations, at which the means are compared.</summary>
    public double BaselineMean { get; }

    /// <summary>The slope θ of the response on the baseline.</summary>
    public TEstimate Slope => Fit.Coefficient("baseline");

    /// <summary>Adjusted mean of each group, in ordinal order of names.</summary>
    public IReadOnlyList<TEstimate> AdjustedMeans { get; }

    /// <summary>Differences of adjusted means, second minus first, for all pairs of groups.</summary>
    /// <param name="adjustment">How the number of pairs is allowed for.</param>
    /// <param name="level">Confidence level of all intervals together.</param>
    public IReadOnlyList<PairwiseComparison> Comparisons(PairwiseAdjustment adjustment, ConfidenceLevel level)
    {
        TEstimate Difference(int first, int second) =>
            Fit.Contrast($"{_names[second]} - {_names[first]}", [.. Weights(second).Zip(Weights(first), (a, b) => a - b)]).GetOrThrow();
        var pairs = PairwiseComparisons.Pairs([.. Enumerable.Range(0, _names.Count)]);
        return PairwiseComparisons.Adjusted([.. pairs.Select(pair => (_names[pair.First], _names[pair.Second], Difference(pair.First, pair.Second)))], _names.Count, adjustment, level);
    }

    /// <summary>Fits the analysis.</summary>
    /// <param name="response">The response, for example the later total.</param>
    /// <param name="baseline">The baseline of the same athletes, for example the earlier total.</param>
    /// <param name="groups">The group of each.</param>
    /// <returns>The analysis, or <see cref="Refusal.TooFewObservations"/> with one group or no residual degree of freedom, <see cref="Refusal.TooManyObservations"/> above 100 groups, <see cref="Refusal.WeaklyIdentified"/> where the groups explain the baseline, <see cref="Refusal.ZeroVariance"/> without scatter.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<Ancova> Estimate(IReadOnlyList<double> response, IReadOnlyList<double> baseline, IReadOnlyList<string> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var x = Numbers.Of(baseline);
        var names = groups.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray();
        if (names.Length < 2) return new NotEstimable("the baseline-adjusted comparison", Refusal.TooFewObservations, 2, names.Length, "groups");
        if (names.Length > PairwiseComparisons.MostGroups) return NotEstimable.TooMany("the baseline-adjusted comparison", PairwiseComparisons.MostGroups, names.Length, "groups");
        var design = RegressionDesign.WithIntercept(x.Length).Add("baseline", x).AddFactor("group", groups);
        return LeastSquares.Fit(response, design).Match<Answer<Ancova>>(
            fit =>
            {
                if (fit.AliasedColumns.Count > 0) return new NotEstimable("the baseline-adjusted comparison", Refusal.WeaklyIdentified, "baselines that overlap between groups", "baselines that the group decides");
                if (fit.ResidualStandardDeviation == 0) return new NotEstimable("the baseline-adjusted comparison", Refusal.ZeroVariance, "responses that scatter", "none");
                return new Ancova(fit, names, Descriptive.MeanOf(x));
            },
            refusal => refusal);
    }

    private double[] Weights(int group)
    {
        var weights = new double[_names.Count + 1];
        weights[0] = 1;
        weights[1] = BaselineMean;
        if (group > 0) weights[group + 1] = 1;
        return weights;
    }
}
