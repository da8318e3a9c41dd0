using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Student's t for one mean, paired differences and two groups. Differences are later minus earlier, compared minus reference group.</summary>
/// <remarks>In the unit of the data. Assumes means that are near enough normal; pooled t assumes equal variances, Welch's does not. Welch (1947), Biometrika 34:28-35 (from memory).</remarks>
public static class TTest
{
    /// <summary>Mean of one sample, SE s/√n, n - 1 degrees of freedom.</summary>
    /// <param name="values">The sample.</param>
    /// <param name="name">What the mean is called in the result.</param>
    /// <returns>The mean, or <see cref="Refusal.TooFewObservations"/> below two numbers, or <see cref="Refusal.ZeroVariance"/> without scatter.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<TEstimate> OneSample(IReadOnlyList<double> values, string name = "mean")
    {
        var sample = Numbers.Of(values, 0);
        Require.Text(name);
        if (sample.Length < 2) return new NotEstimable($"the {name}'s interval", Refusal.TooFewObservations, 2, sample.Length, "numbers");
        var squares = Descriptive.SumOfSquares(sample);
        if (squares <= 0) return new NotEstimable($"the {name}'s interval", Refusal.ZeroVariance, "numbers that vary", "all the same");
        return new TEstimate(name, Descriptive.MeanOf(sample), Math.Sqrt(squares / (sample.Length - 1) / sample.Length), sample.Length - 1);
    }

    /// <summary>Mean of the differences later minus earlier of paired samples.</summary>
    /// <param name="earlier">The earlier values.</param>
    /// <param name="later">The later values of the same athletes, in the same order.</param>
    /// <returns>The mean difference, or <see cref="Refusal.TooFewPairs"/> below two pairs, or <see cref="Refusal.ZeroVariance"/> where all differences are equal.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<TEstimate> Paired(IReadOnlyList<double> earlier, IReadOnlyList<double> later)
    {
        var (before, after) = (Numbers.Of(earlier, 0), Numbers.Of(later, 0));
        Numbers.SameLength(before, after, nameof(earlier), nameof(later));
        if (before.Length < 2) return new NotEstimable("the mean difference", Refusal.TooFewPairs, 2, before.Length, "pairs");
        return OneSample([.. after.Zip(before, (end, start) => end - start)], "mean difference");
    }

    /// <summary>Difference of two group means without equal variances, with Welch's degrees of freedom.</summary>
    /// <remarks>With v_i = s_i²/n_i of each group: SE √(v_1 + v_2), degrees of freedom (v_1 + v_2)² / (v_1²/(n_1 - 1) + v_2²/(n_2 - 1)).</remarks>
    /// <param name="reference">The group that is subtracted.</param>
    /// <param name="compared">The group that is compared with it.</param>
    /// <returns>The difference, or <see cref="Refusal.TooFewObservations"/> below two numbers in a group, or <see cref="Refusal.ZeroVariance"/> where neither group scatters.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<TEstimate> Welch(IReadOnlyList<double> reference, IReadOnlyList<double> compared) => TwoGroups(reference, compared, (first, second) =>
    {
        var (v1, v2) = (first.Variance / first.Count, second.Variance / second.Count);
        var variance = v1 + v2;
        return (variance, variance * variance / (v1 * v1 / (first.Count - 1) + v2 * v2 / (second.Count - 1)));
    });

    /// <summary>Difference of two group means with one pooled variance.</summary>
    /// <remarks>SE s √(1/n_1 + 1/n_2), s² = Σ (n_i - 1) s_i² / (n_1 + n_2 - 2), n_1 + n_2 - 2 degrees of freedom.</remarks>
    /// <param name="reference">The group that is subtracted.</param>
    /// <param name="compared">The group that is compared with it.</param>
    /// <returns>The difference, or <see cref="Refusal.TooFewObservations"/> below two numbers in a group, or <see cref="Refusal.ZeroVariance"/> where neither group scatters.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<TEstimate> Pooled(IReadOnlyList<double> reference, IReadOnlyList<double> compared) => TwoGroups(reference, compared, (first, second) =>
        (SampleMoments.PooledVariance(first, second) * (1.0 / first.Count + 1.0 / second.Count), first.Count + second.Count - 2));

    private static Answer<TEstimate> TwoGroups(
        IReadOnlyList<double> reference,
        IReadOnlyList<double> compared,
        Func<SampleMoments, SampleMoments, (double Variance, double DegreesOfFreedom)> error)
    {
        const string what = "difference of means";
        var fewest = Math.Min(Numbers.Of(reference, 0).Length, Numbers.Of(compared, 0).Length);
        if (fewest < 2) return new NotEstimable($"the {what}", Refusal.TooFewObservations, 2, fewest, "numbers in each group");
        var (first, second) = (SampleMoments.Of(reference), SampleMoments.Of(compared));
        if (first.Variance + second.Variance <= 0) return new NotEstimable($"the {what}", Refusal.ZeroVariance, "numbers that vary within the groups", "all the same");
        var (variance, degreesOfFreedom) = error(first, second);
        return new TEstimate(what, second.Mean - first.Mean, Math.Sqrt(variance), degreesOfFreedom);
    }
}
