namespace SquadAnalytics.Statistics;

/// <summary>Standardised mean change of paired samples, later minus earlier, by every usual standard deviation.</summary>
/// <remarks>
/// The same change is small on one standard deviation and large on another, so the standardiser belongs to the number; without a unit. Limits of d_z and
/// g_z: noncentral t with n - 1 degrees of freedom. Lakens (2013), Front Psychol 4:863; Hedges (1981), J Educ Stat 6:107-128 (from memory).
/// </remarks>
public sealed record PairedEffectSizes
{
    private PairedEffectSizes(double change, SampleMoments earlier, SampleMoments later, SampleMoments differences, double? correlation, ConfidenceLevel level)
    {
        Dz = StandardizedDifference.Exact("SDs of the differences", change / differences.StandardDeviation, Math.Sqrt(differences.Count), differences.Count - 1, level);
        HedgesFactor = differences.Count > 2 ? HedgesCorrection.Exact(differences.Count - 1) : null;
        Gz = HedgesFactor is { } factor ? Dz.Times(factor) with { Standardizer = "SDs of the differences, corrected for small samples" } : null;
        Baseline = earlier.Variance > 0 ? new StandardizedDifference("SDs of the earlier values", change / earlier.StandardDeviation, null) : null;
        var average = Math.Sqrt((earlier.Variance + later.Variance) / 2);
        Average = average > 0 ? new StandardizedDifference("average SDs", change / average, null) : null;
        Correlation = correlation;
        Repeated = correlation is { } r ? new StandardizedDifference("SDs implied by the differences", Dz.Value * Math.Sqrt(2 * (1 - r)), null) : null;
    }

    /// <summary>d_z: change over the SD of the differences, with exact limits.</summary>
    public StandardizedDifference Dz { get; }

    /// <summary>Hedges's factor J for n - 1 degrees of freedom, or null with two pairs.</summary>
    public double? HedgesFactor { get; }

    /// <summary>g_z = J d_z, or null with two pairs.</summary>
    public StandardizedDifference? Gz { get; }

    /// <summary>Change over the SD of the earlier values, or null where those are all equal.</summary>
    public StandardizedDifference? Baseline { get; }

    /// <summary>d_av: change over √((s1² + s2²)/2), or null where all values are equal.</summary>
    public StandardizedDifference? Average { get; }

    /// <summary>d_rm = d_z √(2 (1 - r)), or null without a correlation.</summary>
    public StandardizedDifference? Repeated { get; }

    /// <summary>Correlation of the pairs, or null where one side is constant.</summary>
    public double? Correlation { get; }

    /// <summary>Standardises the mean change.</summary>
    /// <remarks>Assumes independent pairs with normal differences.</remarks>
    /// <param name="earlier">The earlier values.</param>
    /// <param name="later">The later values of the same athletes, in the same order.</param>
    /// <param name="level">Confidence level of the limits.</param>
    /// <returns>The effect sizes, or <see cref="Refusal.TooFewPairs"/> below two pairs, or <see cref="Refusal.ZeroVariance"/> where all differences are equal.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<PairedEffectSizes> Fit(IReadOnlyList<double> earlier, IReadOnlyList<double> later, ConfidenceLevel level) =>
        TTest.Paired(earlier, later).Select(change =>
        {
            double[] before = [.. earlier], after = [.. later];
            var differences = SampleMoments.Of([.. after.Zip(before, (end, start) => end - start)]);
            return new PairedEffectSizes(change.Value, SampleMoments.Of(before), SampleMoments.Of(after), differences, PearsonCorrelation.Coefficient(before, after), level);
        });
}
