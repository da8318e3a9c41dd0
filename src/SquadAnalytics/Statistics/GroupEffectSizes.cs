namespace SquadAnalytics.Statistics;

/// <summary>Standardised difference of two independent groups, compared minus reference, by every usual standard deviation.</summary>
/// <remarks>
/// Without a unit. Limits: noncentral t, exact for normal groups of equal variance (d, g with n1 + n2 - 2 degrees of freedom, Glass's Δ with those of the
/// reference group); for the average SD from Welch's t and its degrees of freedom, approximate. Hedges (1981), J Educ Stat 6:107-128; Glass (1976), Educ Res 5:3-8 (from memory).
/// </remarks>
public sealed record GroupEffectSizes
{
    private GroupEffectSizes(SampleMoments reference, SampleMoments compared, TEstimate welch, ConfidenceLevel level)
    {
        var difference = compared.Mean - reference.Mean;
        var scale = 1 / Math.Sqrt(1.0 / reference.Count + 1.0 / compared.Count);
        var df = reference.Count + compared.Count - 2;
        PooledStandardDeviation = Math.Sqrt(SampleMoments.PooledVariance(reference, compared));
        D = StandardizedDifference.Exact("pooled SDs", difference / PooledStandardDeviation, scale, df, level);
        HedgesFactor = HedgesCorrection.Exact(df);
        G = D.Times(HedgesFactor) with { Standardizer = "pooled SDs, corrected for small samples" };
        Glass = reference.Variance > 0 ? StandardizedDifference.Exact("SDs of the reference group", difference / reference.StandardDeviation, scale, reference.Count - 1, level) : null;
        var average = Math.Sqrt((reference.Variance + compared.Variance) / 2);
        Average = StandardizedDifference.Exact("average SDs", difference / average, average / welch.StandardError, welch.DegreesOfFreedom, level);
    }

    /// <summary>d: difference over the pooled SD, with exact limits.</summary>
    public StandardizedDifference D { get; }

    /// <summary>Hedges's factor J for n1 + n2 - 2 degrees of freedom.</summary>
    public double HedgesFactor { get; }

    /// <summary>g = J d.</summary>
    public StandardizedDifference G { get; }

    /// <summary>Glass's Δ: difference over the reference group's SD, or null where that is 0.</summary>
    public StandardizedDifference? Glass { get; }

    /// <summary>d_av: difference over √((s1² + s2²)/2).</summary>
    public StandardizedDifference Average { get; }

    /// <summary>Pooled standard deviation.</summary>
    public double PooledStandardDeviation { get; }

    /// <summary>Standardises the difference.</summary>
    /// <remarks>Assumes independent normal values with one scatter in both groups; Glass's and the average need no equal scatter.</remarks>
    /// <param name="reference">The group that is subtracted.</param>
    /// <param name="compared">The group that is compared with it.</param>
    /// <param name="level">Confidence level of the limits.</param>
    /// <returns>The effect sizes, or <see cref="Refusal.TooFewObservations"/> below two numbers in a group, or <see cref="Refusal.ZeroVariance"/> where neither group scatters.</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<GroupEffectSizes> Fit(IReadOnlyList<double> reference, IReadOnlyList<double> compared, ConfidenceLevel level) =>
        TTest.Pooled(reference, compared).Select(_ => new GroupEffectSizes(SampleMoments.Of(reference), SampleMoments.Of(compared), TTest.Welch(reference, compared).GetOrThrow(), level));
}
