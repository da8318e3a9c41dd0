using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class TTestTests
{
    // R 4.2.2: t.test(y, x, paired = TRUE); alternative = "greater"; conf.level = .9. Student (1908): t about 4.06; Box, Hunter & Hunter
    // (1978) p. 100: t 3.3489, p 0.008539.
    [Theory]
    [InlineData("sleep_paired")]
    [InlineData("shoes_paired")]
    public void The_paired_t_test_matches_R(string item)
    {
        var (x, y) = Pairs(item);
        var got = TTest.Paired(x, y).GetOrThrow();
        AssertT(item, "paired_t", got);
        ReferenceRows.AssertValue("comparison", item, "paired_t", "estimate", got.Value);
        ReferenceRows.AssertValue("comparison", item, "one_sided", "p", got.PValueAbove(0)!.Value);
        ReferenceRows.AssertValue("comparison", item, "level90", "lower90", got.Interval(ConfidenceLevel.Ninety).Lower);
        ReferenceRows.AssertValue("comparison", item, "level90", "upper90", got.Interval(ConfidenceLevel.Ninety).Upper);
    }

    // R 4.2.2: t.test(y, x); t.test(y, x, var.equal = TRUE); var.test(y, x).
    [Theory]
    [InlineData("toothgrowth_dose05", "")]
    [InlineData("insectsprays", "")]
    [InlineData("individual_response", "")]
    [InlineData("sleep_paired", "unpaired_")]
    public void Welch_and_pooled_t_and_the_variance_ratio_match_R(string item, string prefix)
    {
        var (x, y) = TwoGroups.Of(item);
        var welch = TTest.Welch(x, y).GetOrThrow();
        AssertT(item, prefix + "welch_t", welch);
        var pooled = TTest.Pooled(x, y).GetOrThrow();
        AssertT(item, prefix + "pooled_t", pooled);
        foreach (var (block, got) in new[] { ("welch_t", welch), ("pooled_t", pooled) })
        {
            var means = ReferenceData.Values("comparison", item, prefix + block).Numbers("estimate");
            ReferenceData.AssertClose(means[0] - means[1], got.Value, 1e-9);
        }

        var ratio = VarianceRatio.Fit(x, y).GetOrThrow();
        ReferenceRows.AssertValue("comparison", item, prefix + "variance_ratio", "f", ratio.Ratio);
        ReferenceRows.AssertValue("comparison", item, prefix + "variance_ratio", "p", ratio.PValue);
        ReferenceRows.AssertValue("comparison", item, prefix + "variance_ratio", "lower95", ratio.Interval(ConfidenceLevel.NinetyFive).Lower);
        ReferenceRows.AssertValue("comparison", item, prefix + "variance_ratio", "upper95", ratio.Interval(ConfidenceLevel.NinetyFive).Upper);
    }

    // R 4.2.2: p_lower = pt((mean(d) + e)/se, n - 1, lower = FALSE); p_upper = pt((mean(d) - e)/se, n - 1), e = 0.2 sd(x).
    [Theory]
    [InlineData("sleep_paired")]
    [InlineData("shoes_paired")]
    public void Two_one_sided_tests_match_R(string item)
    {
        var (x, y) = Pairs(item);
        var bound = 0.2 * Descriptive.StandardDeviation(x);
        var change = TTest.Paired(x, y).GetOrThrow();
        var got = EquivalenceTest.Fit(change, -bound, bound).GetOrThrow();
        ReferenceRows.AssertValue("comparison", item, "tost", "bound", bound);
        ReferenceRows.AssertValue("comparison", item, "tost", "p_lower", got.PValueLower);
        ReferenceRows.AssertValue("comparison", item, "tost", "p_upper", got.PValueUpper);
        ReferenceRows.AssertValue("comparison", item, "tost", "p_greater_than_bound", got.PValue);
        ReferenceRows.AssertValue("comparison", item, "tost", "chance_above", StudentTDistribution.UpperTail((bound - change.Value) / change.StandardError, change.DegreesOfFreedom));
        ReferenceRows.AssertValue("comparison", item, "tost", "chance_below", StudentTDistribution.Cdf((-bound - change.Value) / change.StandardError, change.DegreesOfFreedom));
    }

    // R 4.2.2: t.test(v)$conf.int; t.test(v, conf.level = .9)$conf.int; sd(v) sqrt((n - 1)/qchisq(c(.975, .025), n - 1)).
    [Theory]
    [InlineData("precip23")]
    [InlineData("small6")]
    public void The_intervals_of_one_mean_and_one_SD_match_R(string item)
    {
        var v = ReferenceData.Column("robust", item + ".csv", "v");
        var mean = TTest.OneSample(v).GetOrThrow();
        ReferenceRows.AssertValue("robust", item, "mean_t_interval", "se", mean.StandardError);
        ReferenceRows.AssertValue("robust", item, "mean_t_interval", "lower95", mean.Interval(ConfidenceLevel.NinetyFive).Lower);
        ReferenceRows.AssertValue("robust", item, "mean_t_interval", "upper95", mean.Interval(ConfidenceLevel.NinetyFive).Upper);
        ReferenceRows.AssertValue("robust", item, "mean_t_interval", "lower90", mean.Interval(ConfidenceLevel.Ninety).Lower);
        ReferenceRows.AssertValue("robust", item, "mean_t_interval", "upper90", mean.Interval(ConfidenceLevel.Ninety).Upper);
        var (s, df) = (Descriptive.StandardDeviation(v), v.Length - 1);
        ReferenceRows.AssertValue("robust", item, "sd_interval", "lower95", s * Math.Sqrt(df / ChiSquaredDistribution.Quantile(0.975, df)));
        ReferenceRows.AssertValue("robust", item, "sd_interval", "upper95", s * Math.Sqrt(df / ChiSquaredDistribution.Quantile(0.025, df)));
    }

    // R 4.2.2: wilcox.test(round(y - x, 8), exact = FALSE, correct = TRUE).
    [Theory]
    [InlineData("sleep_paired")]
    [InlineData("shoes_paired")]
    public void The_signed_rank_test_beside_it_matches_R(string item)
    {
        var (x, y) = Pairs(item);
        var got = SignedRankTest.FitPairs(x, y, ConfidenceLevel.Ninety).GetOrThrow();
        ReferenceRows.AssertValue("comparison", item, "wilcoxon", "v", got.V);
        ReferenceRows.AssertValue("comparison", item, "wilcoxon", "p", got.NormalPValue);
    }

    [Fact]
    public void Equivalence_at_5_percent_is_a_90_percent_interval_inside_the_bounds() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Double[0.1, 2], Gen.Double[2, 60], Gen.Double[0.5, 4]).Sample((value, error, df, bound) =>
        {
            var estimate = new TEstimate("change", value, error, df);
            var interval = estimate.Interval(ConfidenceLevel.Ninety);
            Assert.Equal(interval.Lower > -bound && interval.Upper < bound, EquivalenceTest.Fit(estimate, -bound, bound).GetOrThrow().PValue < 0.05);
        }, iter: 300);

    [Fact]
    public void Samples_that_are_too_small_or_all_the_same_are_refused()
    {
        Assert.Equal("Not enough data for the mean difference: needs 2 pairs, has 1 pairs.", TTest.Paired([1], [2]).ToString());
        Assert.Equal(Refusal.ZeroVariance, TTest.Paired([1, 2, 3], [2, 3, 4]).Refusal!.Reason);
        Assert.Equal(Refusal.TooFewObservations, TTest.Welch([1], [2, 3]).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, VarianceRatio.Fit([1, 1], [2, 3]).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => TTest.Paired([1, 2], [1, 2, 3]));
    }

    [Fact]
    public void The_order_of_athletes_does_not_matter_and_a_shift_of_everyone_changes_nothing() =>
        Gen.Select(Gen.Double[50, 80].Array[6], Gen.Double[50, 80].Array[6], Gen.Double[-20, 20]).Sample((earlier, later, shift) =>
        {
            var plain = TTest.Paired(earlier, later).GetOrThrow();
            var turned = TTest.Paired([.. earlier.Reverse().Select(x => x + shift)], [.. later.Reverse().Select(x => x + shift)]).GetOrThrow();
            Assert.Equal(plain.Value, turned.Value, 1e-10);
            Assert.Equal(plain.StandardError, turned.StandardError, 1e-10);
        }, iter: 100);

    private static (double[] X, double[] Y) Pairs(string item) =>
        (ReferenceData.Column("comparison", item + ".csv", "x"), ReferenceData.Column("comparison", item + ".csv", "y"));

    private static void AssertT(string item, string block, TEstimate got)
    {
        ReferenceRows.AssertValue("comparison", item, block, "t", got.T!.Value);
        ReferenceRows.AssertValue("comparison", item, block, "df", got.DegreesOfFreedom);
        ReferenceRows.AssertValue("comparison", item, block, "se", got.StandardError);
        ReferenceRows.AssertValue("comparison", item, block, "p", got.PValue!.Value);
        ReferenceRows.AssertValue("comparison", item, block, "lower95", got.Interval(ConfidenceLevel.NinetyFive).Lower);
        ReferenceRows.AssertValue("comparison", item, block, "upper95", got.Interval(ConfidenceLevel.NinetyFive).Upper);
    }
}
