using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class RepeatedMeasuresAndCountTests
{
    private static readonly string[] Athletes = ["1", "1", "1", "1", "2", "2", "2", "2", "3", "3", "3", "3"];
    private static readonly double[] Load = [2, 4, 3, 6, 1, 3, 5, 4, 5, 4, 7, 8];
    private static readonly double[] Totals = [318, 321, 320, 325, 300, 303, 307, 304, 341, 340, 346, 347];

    // R 4.2.2: l <- lm(y ~ factor(athlete) + x); anova(l); sqrt(SS_x/(SS_x + SS_res)); summary(l)$coef["x", ]. Invented data.
    [Fact]
    public void The_correlation_within_athletes_matches_R()
    {
        var got = RepeatedMeasuresCorrelation.Fit(Athletes, Load, Totals).GetOrThrow();
        ReferenceData.AssertClose(0.985902699170362, got.R, 1e-12);
        ReferenceData.AssertClose(1.76363636363636, got.Slope.Value, 1e-12);
        ReferenceData.AssertClose(0.105822242971117, got.Slope.StandardError, 1e-11);
        ReferenceData.AssertClose(1.69885387632816e-07, got.PValue!.Value, 1e-9);
        Assert.Equal(8, got.DegreesOfFreedom);
        Assert.True(got.Interval(ConfidenceLevel.Ninety)!.Value.Contains(got.R));
    }

    [Fact]
    public void An_athletes_own_level_does_not_matter_and_single_observations_are_left_out() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[-50, 50]).Sample((shift, single) =>
        {
            var plain = RepeatedMeasuresCorrelation.Fit(Athletes, Load, Totals).GetOrThrow();
            var moved = RepeatedMeasuresCorrelation.Fit([.. Athletes, "4"], [.. Load, 3], [.. Totals.Select((y, i) => i < 4 ? y + shift : y), single]).GetOrThrow();
            Assert.Equal(plain.R, moved.R, 1e-10);
            Assert.Equal(plain.DegreesOfFreedom, moved.DegreesOfFreedom);
        }, iter: 50);

    // R 4.2.2: chisq.test(c(18, 6, 4, 5, 4, 15, 3, 2, 2, 1)); chisq.test(c(10, 20, 30), p = c(.2, .3, .5)).
    [Fact]
    public void The_chi_squared_test_of_last_digits_matches_R()
    {
        var digits = ChiSquaredTest.Fit([18, 6, 4, 5, 4, 15, 3, 2, 2, 1]).GetOrThrow();
        Assert.Equal(50.0, digits.Statistic, 1e-12);
        Assert.Equal(9, digits.DegreesOfFreedom);
        ReferenceData.AssertClose(1.07723820225747e-07, digits.PValue, 1e-11);
        var shares = ChiSquaredTest.Fit([10, 20, 30], [0.2, 0.3, 0.5]).GetOrThrow();
        ReferenceData.AssertClose(0.555555555555556, shares.Statistic, 1e-12);
        ReferenceData.AssertClose(0.757465128396966, shares.PValue, 1e-12);
    }

    // R 4.2.2: binom.test(33, 60, .2, conf.level = .9).
    [Fact]
    public void The_exact_test_of_a_share_matches_R()
    {
        var got = BinomialTest.Fit(33, 60, 0.2);
        Assert.Equal(0.55, got.Share, 1e-15);
        ReferenceData.AssertClose(2.27197857225051e-09, got.PValue, 1e-10);
        ReferenceData.AssertClose(0.436009653966122, got.Interval(ConfidenceLevel.Ninety).Lower, 1e-10);
        ReferenceData.AssertClose(0.66015746348609, got.Interval(ConfidenceLevel.Ninety).Upper, 1e-10);
    }

    // R 4.2.2: polyroot of (A - r B)^2 = t^2 (v11 - 2 r v12 + r^2 v22), seconds at one station and in all, four invented sessions.
    [Fact]
    public void Fiellers_interval_solves_its_quadratic()
    {
        var got = FiellerRatio.OfMeans([3.4, 2.9, 3.6, 2.9], [6.2, 5.2, 6.0, 5.8], ConfidenceLevel.Ninety).GetOrThrow();
        ReferenceData.AssertClose(0.551724137931034, got.Ratio, 1e-12);
        ReferenceData.AssertClose(0.502063698084698, got.Interval.Lower, 1e-9);
        ReferenceData.AssertClose(0.600526424571245, got.Interval.Upper, 1e-9);
        ReferenceData.AssertClose(0.00768296397024083, got.Instability, 1e-9);
    }

    [Fact]
    public void A_denominator_that_may_be_0_makes_the_ratio_unstable() =>
        Assert.Equal(Refusal.RatioUnstable, FiellerRatio.OfMeans([1, 2, 1.5], [-1, 1.5, 0.2], ConfidenceLevel.Ninety).Refusal!.Reason);

    [Fact]
    public void Turning_both_signs_leaves_a_ratio_as_it_is()
    {
        var plain = FiellerRatio.OfMeans([3.4, 2.9, 3.6, 2.9], [6.2, 5.2, 6.0, 5.8], ConfidenceLevel.Ninety).GetOrThrow();
        var turned = FiellerRatio.OfMeans([-3.4, -2.9, -3.6, -2.9], [-6.2, -5.2, -6.0, -5.8], ConfidenceLevel.Ninety).GetOrThrow();
        Assert.Equal(plain.Interval.Lower, turned.Interval.Lower, 1e-12);
        Assert.Equal(plain.Interval.Upper, turned.Interval.Upper, 1e-12);
    }

    [Fact]
    public void Thin_counts_and_measures_are_refused()
    {
        Assert.Equal(Refusal.TooFewObservations, ChiSquaredTest.Fit([3]).Refusal!.Reason);
        Assert.Equal(Refusal.TooFewObservations, RepeatedMeasuresCorrelation.Fit(["1", "2"], [1, 2], [1, 2]).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, RepeatedMeasuresCorrelation.Fit(["1", "1", "1"], [1, 1, 1], [1, 2, 3]).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => ChiSquaredTest.Fit([1, 2], [0.5, 0.6]));
    }
}
