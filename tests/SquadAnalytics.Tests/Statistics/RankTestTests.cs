using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class RankTestTests
{
    // Differences of seven invented athletes between two blocks.
    private static readonly double[] Changes = [-6.133333, -4.0, -9.216667, -4.908333, -3.733333, -2.233333, -9.7];

    // exactRankTests 0.8.35: wilcox.exact(d, 0 * d, paired = TRUE), exact under ties; R 4.2.2: wilcox.test(d, exact = FALSE, correct = ...),
    // median of the Walsh averages, binom.test, and enumeration of all sign patterns. d is rounded to 8 decimals so that equal ones tie.
    [Theory]
    [InlineData("depression")]
    [InlineData("shoes")]
    public void The_tests_of_paired_differences_match_R(string item)
    {
        var (x, y) = (ReferenceData.Column("robust", item + ".csv", "x"), ReferenceData.Column("robust", item + ".csv", "y"));
        double[] d = [.. y.Zip(x, (later, earlier) => later - earlier)];
        var got = SignedRankTest.FitPairs(x, y, ConfidenceLevel.NinetyFive).GetOrThrow();
        void Check(string block, string name, double value) => ReferenceRows.AssertValue("robust", item, block, name, value);
        Check("signed_rank_exact", "v", got.V);
        Check("signed_rank_exact", "p", got.PValue);
        Check("signed_rank_exact", "p_greater", got.PValueGreater);
        Check("signed_rank_stats", "v", got.V);
        Check("signed_rank_stats", "p", ReferenceData.Values("robust", item, "signed_rank_stats").GetProperty("ties_or_zeros").GetBoolean() ? got.NormalPValue : got.PValue);
        Check("signed_rank_normal", "p_corrected", got.NormalPValue);
        Check("signed_rank_normal", "p_uncorrected", got.NormalPValueUncorrected);
        Check("hodges_lehmann", "estimate", got.HodgesLehmann);
        Check("hodges_lehmann", "without_zeros", SignedRankTest.Fit([.. d.Where(value => Math.Abs(value) > 1e-8)], ConfidenceLevel.NinetyFive).GetOrThrow().HodgesLehmann);
        var sign = BinomialTest.Sign(d).GetOrThrow();
        Check("sign_test", "positive", sign.Successes);
        Check("sign_test", "non_zero", sign.Trials);
        Check("sign_test", "p", sign.PValue);
        Check("sign_flip", "p", SignFlipTest.Fit(d).GetOrThrow().PValue);
    }

    // R 4.2.2: wilcox.test(d, conf.int = TRUE, exact = TRUE), and exactRankTests as above, on untied differences (Hollander & Wolfe 1973, p. 29).
    [Fact]
    public void The_Hodges_Lehmann_limits_match_R()
    {
        var got = SignedRankTest.FitPairs(ReferenceData.Column("robust", "depression.csv", "x"), ReferenceData.Column("robust", "depression.csv", "y"), ConfidenceLevel.NinetyFive).GetOrThrow();
        foreach (var block in new[] { "signed_rank_stats", "signed_rank_exact" })
        {
            ReferenceRows.AssertValue("robust", "depression", block, "lower95", got.Interval!.Value.Lower);
            ReferenceRows.AssertValue("robust", "depression", block, "upper95", got.Interval.Value.Upper);
            ReferenceRows.AssertValue("robust", "depression", block, "estimate", got.HodgesLehmann);
        }
    }

    // R 4.2.2: wilcox.test(d, conf.int = TRUE, conf.level = .9, exact = TRUE); 1 - 2 * psignrank(3, 7); all 2^7 sign patterns.
    [Fact]
    public void Two_blocks_of_seven_athletes_give_what_R_gives()
    {
        var got = SignedRankTest.Fit(Changes, ConfidenceLevel.Ninety).GetOrThrow();
        Assert.Equal(-5.622917, got.HodgesLehmann, 1e-6);
        Assert.Equal(-7.916667, got.Interval!.Value.Lower, 1e-6);
        Assert.Equal(-3.570833, got.Interval.Value.Upper, 1e-6);
        Assert.Equal(0.921875, got.AchievedConfidence!.Value, 1e-12);
        Assert.Equal(0.015625, got.PValue, 1e-15);
        Assert.Equal(0.015625, SignFlipTest.Fit(Changes).GetOrThrow().PValue, 1e-15);
    }

    // R 4.2.2: wilcox.test(x, y, conf.int = TRUE), exact (Hollander & Wolfe 1973, p. 69; published W = 35, one-sided p = 0.1272).
    [Fact]
    public void The_rank_sum_test_matches_R()
    {
        var group = ReferenceData.Text("robust", "permeability.csv")["group"];
        var value = ReferenceData.Column("robust", "permeability.csv", "value");
        double[] Of(string name) => [.. value.Where((_, i) => group[i] == name)];
        var got = RankSumTest.Fit(Of("x"), Of("y"), ConfidenceLevel.NinetyFive).GetOrThrow();
        void Check(string name, double number) => ReferenceRows.AssertValue("robust", "permeability", "rank_sum", name, number);
        Check("w", got.W);
        Check("p", got.PValue);
        Check("p_greater", got.PValueGreater);
        Check("shift", got.Shift);
        Check("lower95", got.Interval!.Value.Lower);
        Check("upper95", got.Interval.Value.Upper);
    }

    // By hand: of the 6 ways to put two of 1, 1, 2, 3 into the first sample, {1, 1} has rank sum 3, the lowest; p = 2 × 1/6.
    [Fact]
    public void Tied_ranks_keep_the_rank_sum_test_exact()
    {
        var got = RankSumTest.Fit([1, 1], [2, 3], ConfidenceLevel.Ninety).GetOrThrow();
        Assert.Equal(1.0 / 3, got.PValue, 1e-12);
        Assert.Equal(0, got.W);
    }

    // R 4.2.2: wilcox.test((1:20)^1.3, (1:15) * 2 + .5, exact = TRUE, conf.int = TRUE, conf.level = .9); for the tied samples
    // combn(12, 7, function(i) sum(rank(c(x, y))[i])), all 792 subsets.
    [Fact]
    public void Larger_and_tied_samples_keep_the_rank_sum_test_exact()
    {
        var large = RankSumTest.Fit(
            [.. Enumerable.Range(1, 20).Select(k => Math.Pow(k, 1.3))], [.. Enumerable.Range(1, 15).Select(k => 2 * k + 0.5)], ConfidenceLevel.Ninety).GetOrThrow();
        Assert.Equal(181, large.W);
        ReferenceData.AssertClose(0.313644864400891, large.PValue, 1e-11);
        ReferenceData.AssertClose(-2.43750002251946, large.Interval!.Value.Lower, 1e-11);
        ReferenceData.AssertClose(14.2583473599051, large.Interval.Value.Upper, 1e-11);
        ReferenceData.AssertClose(5.37638693116432, large.Shift, 1e-11);
        var tied = RankSumTest.Fit([62.4, 63.1, 63.1, 64.0, 61.8, 62.9, 63.5], [63.1, 64.2, 65.0, 64.0, 66.1], ConfidenceLevel.Ninety).GetOrThrow();
        Assert.Equal(3.5, tied.W);
        ReferenceData.AssertClose(10.0 / 792, tied.PValueLess, 1e-12);
        ReferenceData.AssertClose(788.0 / 792, tied.PValueGreater, 1e-12);
    }

    [Fact]
    public void Random_sign_flips_come_close_to_the_exact_count()
    {
        var exact = SignFlipTest.Fit(Changes).GetOrThrow();
        var random = SignFlipTest.Fit(Changes, new SignFlipOptions { ExactUpTo = 0, Seed = 5 }).GetOrThrow();
        Assert.False(random.IsExact);
        Assert.Equal(10_000, random.Patterns);
        Assert.Equal(exact.PValue, random.PValue, 4 * Math.Sqrt(0.0156 / 10_000));
    }

    [Fact]
    public void Too_few_differences_have_no_limits_at_90_percent() => Assert.Null(SignedRankTest.Fit([-1, -2, -3, -4], ConfidenceLevel.Ninety).GetOrThrow().Interval);

    [Fact]
    public void Differences_that_are_all_0_are_refused()
    {
        Assert.Equal(Refusal.ZeroVariance, SignedRankTest.Fit([0, 0, 0], ConfidenceLevel.Ninety).Refusal!.Reason);
        Assert.Equal(Refusal.TooFewObservations, BinomialTest.Sign([0, 0]).Refusal!.Reason);
    }

    [Fact]
    public void Turning_the_signs_turns_the_estimate_and_keeps_the_p() =>
        Gen.Int[-40, 40].Array[2, 12].Sample(tenths =>
        {
            double[] d = [.. tenths.Select(tenth => tenth / 10.0)];
            if (d.All(value => value == 0)) return;
            var (plain, turned) = (SignedRankTest.Fit(d, ConfidenceLevel.Ninety).GetOrThrow(), SignedRankTest.Fit([.. d.Select(value => -value)], ConfidenceLevel.Ninety).GetOrThrow());
            Assert.Equal(plain.PValue, turned.PValue, 1e-12);
            Assert.Equal(plain.HodgesLehmann, -turned.HodgesLehmann, 1e-12);
            Assert.Equal(plain.PValueLess, turned.PValueGreater, 1e-12);
        }, iter: 200);
}
