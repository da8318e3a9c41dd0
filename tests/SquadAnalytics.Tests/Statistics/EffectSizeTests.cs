using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class EffectSizeTests
{
    // R 4.2.2: dz = mean(d)/sd(d), limits ncp/sqrt(n) with pt(t, n - 1, ncp) = .975 and .025 by uniroot; J(m) = gamma(m/2) /
    // (sqrt(m/2) gamma((m - 1)/2)); d_av, d_baseline, d_rm by their formulas. effectsize 0.8.3 finds its limits by a loose optimiser (1e-4).
    [Theory]
    [InlineData("sleep_paired")]
    [InlineData("shoes_paired")]
    public void Paired_effect_sizes_match_R(string item)
    {
        var (x, y) = (ReferenceData.Column("comparison", item + ".csv", "x"), ReferenceData.Column("comparison", item + ".csv", "y"));
        var got = PairedEffectSizes.Fit(x, y, ConfidenceLevel.NinetyFive).GetOrThrow();
        void Check(string name, double value) => ReferenceRows.AssertValue("comparison", item, "effect_sizes", name, value);
        Check("dz", got.Dz.Value);
        Check("dz_lower95", got.Dz.Interval!.Value.Lower);
        Check("dz_upper95", got.Dz.Interval.Value.Upper);
        Check("J", got.HedgesFactor!.Value);
        Check("J_approx_1_minus_3_over_4df_minus_1", HedgesCorrection.Approximate(9));
        Check("gz", got.Gz!.Value);
        Check("gz_lower95", got.Gz.Interval!.Value.Lower);
        Check("gz_upper95", got.Gz.Interval.Value.Upper);
        Check("d_av", got.Average!.Value);
        Check("d_baseline", got.Baseline!.Value);
        Check("d_rm", got.Repeated!.Value);
        Check("r", got.Correlation!.Value);
        Check("sd_x", Descriptive.StandardDeviation(x));
        Check("sd_y", Descriptive.StandardDeviation(y));
        Check("sd_diff", Descriptive.StandardDeviation([.. y.Zip(x, (later, earlier) => later - earlier)]));
        AssertPackage(item, "effectsize_package", "cohens_d", got.Dz);
        AssertPackage(item, "effectsize_package", "hedges_g", got.Gz);
    }

    // R 4.2.2: d = (mean(y) - mean(x))/pooled sd, limits ncp sqrt(1/n1 + 1/n2) with pt(t, df, ncp) = .975 and .025; g = J(df) d.
    [Theory]
    [InlineData("toothgrowth_dose05", "")]
    [InlineData("insectsprays", "")]
    [InlineData("individual_response", "")]
    [InlineData("sleep_paired", "unpaired_")]
    public void Group_effect_sizes_match_R(string item, string prefix)
    {
        var (x, y) = TwoGroups.Of(item);
        var got = GroupEffectSizes.Fit(x, y, ConfidenceLevel.NinetyFive).GetOrThrow();
        void Check(string name, double value) => ReferenceRows.AssertValue("comparison", item, prefix + "effect_sizes", name, value);
        Check("d", got.D.Value);
        Check("d_lower95", got.D.Interval!.Value.Lower);
        Check("d_upper95", got.D.Interval.Value.Upper);
        Check("J", got.HedgesFactor);
        Check("g", got.G.Value);
        Check("g_lower95", got.G.Interval!.Value.Lower);
        Check("g_upper95", got.G.Interval.Value.Upper);
        Check("glass_delta", got.Glass!.Value);
        Check("pooled_sd", got.PooledStandardDeviation);
        AssertPackage(item, prefix + "effectsize_package", "cohens_d", got.D);
        AssertPackage(item, prefix + "effectsize_package", "hedges_g", got.G);
        AssertPackage(item, prefix + "effectsize_package", "cohens_d_unpooled", got.Average);
    }

    // R 4.2.2: uniroot(function(nc) pt(t, 9, nc) - p, c(-20, 20), tol = 1e-13), t = delta / sqrt(1/10 + 1/10), ToothGrowth dose 0.5.
    [Fact]
    public void The_limits_of_Glass_match_R()
    {
        var (x, y) = TwoGroups.Of("toothgrowth_dose05");
        var got = GroupEffectSizes.Fit(x, y, ConfidenceLevel.NinetyFive).GetOrThrow().Glass!;
        ReferenceData.AssertClose(1.9114302884526, got.Value, 1e-12);
        ReferenceData.AssertClose(0.651292460965343, got.Interval!.Value.Lower, 1e-9);
        ReferenceData.AssertClose(3.12003262246867, got.Interval.Value.Upper, 1e-9);
    }

    // MASS::anorexia (Hand et al. 1993), R 4.2.2: v = var(change, CBT) - var(change, FT), sign(z) sqrt(abs(z)) of v -+ 1.96 se,
    // the rounded 1.96, which is a level of 2 Φ(1.96) - 1.
    [Fact]
    public void The_SD_of_individual_responses_matches_R()
    {
        var (x, y) = TwoGroups.Of("individual_response");
        var got = IndividualResponses.Fit(x, y, new ConfidenceLevel(2 * NormalDistribution.Cdf(1.96) - 1)).GetOrThrow();
        void Check(string name, double value) => ReferenceRows.AssertValue("comparison", "individual_response", "individual_response", name, value);
        Check("sd_change_1", Descriptive.StandardDeviation(y));
        Check("sd_change_0", Descriptive.StandardDeviation(x));
        Check("sd_individual_response", got.StandardDeviation);
        Check("se_variance", got.VarianceStandardError);
        Check("lower95", got.Interval.Lower);
        Check("upper95", got.Interval.Upper);
    }

    [Fact]
    public void Less_scatter_than_the_comparison_group_gives_a_negative_SD_of_responses() =>
        Assert.True(IndividualResponses.Fit([-4, 0, 5, 9], [1, 2, 1, 2], ConfidenceLevel.Ninety).GetOrThrow().StandardDeviation < 0);

    [Fact]
    public void Effect_sizes_have_no_unit()
    {
        double[] earlier = [329.0, 298.4, 356.1, 312.7, 341.0], later = [322.9, 294.8, 345.3, 306.4, 338.8];
        var seconds = PairedEffectSizes.Fit(earlier, later, ConfidenceLevel.Ninety).GetOrThrow();
        var minutes = PairedEffectSizes.Fit([.. earlier.Select(x => x / 60)], [.. later.Select(x => x / 60)], ConfidenceLevel.Ninety).GetOrThrow();
        Assert.Equal(seconds.Dz.Value, minutes.Dz.Value, 1e-10);
        Assert.Equal(seconds.Baseline!.Value, minutes.Baseline!.Value, 1e-10);
        Assert.True(seconds.Dz.Interval!.Value.Contains(seconds.Dz.Value));
    }

    [Fact]
    public void Hedges_factor_needs_more_than_one_degree_of_freedom() => Assert.Throws<ArgumentOutOfRangeException>(() => HedgesCorrection.Exact(1));

    private static void AssertPackage(string item, string block, string name, StandardizedDifference got)
    {
        var row = ReferenceData.Values("comparison", item, block).GetProperty(name);
        ReferenceData.AssertClose(row.Number("estimate"), got.Value, 1e-4);
        ReferenceData.AssertClose(row.Number("lower95"), got.Interval!.Value.Lower, 1e-4);
        ReferenceData.AssertClose(row.Number("upper95"), got.Interval.Value.Upper, 1e-4);
    }
}
