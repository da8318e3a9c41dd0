using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class RankMethodTests
{
    private static readonly double[] Weeks = [0, 1, 2, 3, 5, 6, 7, 9, 10, 11];
    private static readonly double[] Totals = [331.2, 330.4, 327.1, 328.0, 327.3, 323.6, 324.5, 322.9, 319.8, 321.2];

    // R 4.2.2, the definitions written out: median of pairwise slopes, Sen's limits from Kendall's variance, without ties (tuna) and with (cars).
    [Theory]
    [InlineData("tuna")]
    [InlineData("cars")]
    public void The_Theil_Sen_slope_and_its_limits_match_R(string item)
    {
        var (x, y) = Pairs(item);
        void Check(string name, double got) => ReferenceRows.AssertValue("robust", item, "theil_sen", name, got);
        var got = TheilSen.Fit(x, y, ConfidenceLevel.NinetyFive).GetOrThrow();
        Check("n_slopes", got.PairwiseSlopes);
        Check("slope", got.Slope);
        Check("intercept_median_residual", got.Intercept);
        Check("intercept_medians", got.InterceptOfMedians);
        Check("S", got.Kendall.S);
        Check("var_S", got.Kendall.VarianceOfS);
        Check("lower95_rank_rounded", got.Interval!.Value.Lower);
        Check("upper95_rank_rounded", got.Interval.Value.Upper);
        Check("mann_kendall_z", got.Kendall.ZWithContinuity);
        Check("mann_kendall_p", got.Kendall.MannKendallPValue);
        var interpolated = TheilSen.Fit(x, y, ConfidenceLevel.NinetyFive, RankLimits.Interpolated).GetOrThrow().Interval!.Value;
        Check("lower95_interpolated", interpolated.Lower);
        Check("upper95_interpolated", interpolated.Upper);
    }

    // R 4.2.2: cor.test(x, y, method = "kendall"), exact without ties, normal with.
    [Theory]
    [InlineData("tuna")]
    [InlineData("cars")]
    public void Kendalls_correlation_matches_R(string item)
    {
        var (x, y) = Pairs(item);
        var got = KendallCorrelation.Fit(x, y).GetOrThrow();
        ReferenceRows.AssertValue("robust", item, "kendall", "tau", got.Tau);
        ReferenceRows.AssertValue("robust", item, "kendall", "statistic", item == "tuna" ? got.Concordant : got.Z);
        ReferenceRows.AssertValue("robust", item, "kendall", "p", got.PValue);
        ReferenceRows.AssertValue("robust", item, "kendall_asymptotic", "z", got.Z);
        ReferenceRows.AssertValue("robust", item, "kendall_asymptotic", "p", NormalDistribution.TwoSidedPValue(got.Z));
        ReferenceRows.AssertValue("robust", item, "kendall_asymptotic", "z_continuity", got.ZWithContinuity);
        ReferenceRows.AssertValue("robust", item, "kendall_asymptotic", "p_continuity", got.MannKendallPValue);
    }

    // R 4.2.2: cor.test(x, y, method = "spearman"), exact for tuna; cor.test(x, y).
    [Theory]
    [InlineData("tuna")]
    [InlineData("cars")]
    public void Spearmans_and_Pearsons_correlations_match_R(string item)
    {
        var (x, y) = Pairs(item);
        var spearman = SpearmanCorrelation.Fit(x, y).GetOrThrow();
        Assert.Equal(item == "tuna", spearman.IsExact);
        ReferenceRows.AssertValue("robust", item, "spearman", "rho", spearman.Rho);
        ReferenceRows.AssertValue("robust", item, "spearman", "statistic", spearman.SumOfSquaredDifferences);
        ReferenceRows.AssertValue("robust", item, "spearman", "p", spearman.PValue);
        var pearson = PearsonCorrelation.Fit(x, y).GetOrThrow();
        ReferenceRows.AssertValue("robust", item, "pearson", "r", pearson.R);
        ReferenceRows.AssertValue("robust", item, "pearson", "t", pearson.T!.Value);
        ReferenceRows.AssertValue("robust", item, "pearson", "p", pearson.PValue);
        ReferenceRows.AssertValue("robust", item, "pearson", "lower95", pearson.Interval(ConfidenceLevel.NinetyFive)!.Value.Lower);
        ReferenceRows.AssertValue("robust", item, "pearson", "upper95", pearson.Interval(ConfidenceLevel.NinetyFive)!.Value.Upper);
    }

    // R 4.2.2: lm(y ~ x); confint, beside the robust line.
    [Theory]
    [InlineData("tuna")]
    [InlineData("cars")]
    public void The_least_squares_line_beside_it_matches_R(string item)
    {
        var (x, y) = Pairs(item);
        var line = LeastSquares.FitLine(x, y).GetOrThrow();
        ReferenceRows.AssertValue("robust", item, "ols", "sigma", line.ResidualStandardDeviation);
        ReferenceRows.AssertValue("robust", item, "ols", "r_squared", line.RSquared!.Value);
        var expected = ReferenceData.Values("robust", item, "ols");
        for (var i = 0; i < 2; i++)
        {
            ReferenceData.AssertClose(expected.GetProperty("coefficients")[i].Number("Estimate"), line.Coefficients[i].Value, 1e-9);
            ReferenceData.AssertClose(expected.GetProperty("coefficients")[i].Number("Std. Error"), line.Coefficients[i].StandardError, 1e-9);
            ReferenceData.AssertClose(expected.GetProperty("coefficients")[i].Number("t value"), line.Coefficients[i].T!.Value, 1e-9);
            ReferenceData.AssertClose(expected.GetProperty("coefficients")[i].Number("Pr(>|t|)"), line.Coefficients[i].PValue!.Value, 1e-9);
            ReferenceData.AssertClose(expected.GetProperty("confint")[i].Number("2.5 %"), line.Coefficients[i].Interval(ConfidenceLevel.NinetyFive).Lower, 1e-9);
            ReferenceData.AssertClose(expected.GetProperty("confint")[i].Number("97.5 %"), line.Coefficients[i].Interval(ConfidenceLevel.NinetyFive).Upper, 1e-9);
        }
    }

    // R 4.2.2: median of pairwise slopes and cor.test(weeks, totals, method = "kendall") on ten invented weekly totals with gaps.
    [Fact]
    public void A_season_with_gaps_has_the_slope_and_exact_p_that_R_gives()
    {
        var got = TheilSen.Fit(Weeks, Totals, ConfidenceLevel.Ninety).GetOrThrow();
        Assert.Equal(-0.92, got.Slope, 1e-12);
        Assert.Equal(-1.171429, got.Interval!.Value.Lower, 1e-6);
        Assert.Equal(-0.80, got.Interval.Value.Upper, 1e-6);
        Assert.Equal(-37, got.Kendall.S);
        Assert.Equal(0.000357694, got.Kendall.PValue, 1e-9);
    }

    [Fact]
    public void Too_few_points_have_no_interval_of_the_slope() => Assert.Null(TheilSen.Fit([1, 2, 3], [3, 1, 2], ConfidenceLevel.NinetyFive).GetOrThrow().Interval);

    [Fact]
    public void A_constant_series_is_refused()
    {
        Assert.Equal(Refusal.ZeroVariance, KendallCorrelation.Fit([1, 2, 3], [5, 5, 5]).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, SpearmanCorrelation.Fit([1, 2, 3], [5, 5, 5]).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, PearsonCorrelation.Fit([1, 2, 3], [5, 5, 5]).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, TheilSen.Fit([1, 1, 1], [5, 6, 7], ConfidenceLevel.Ninety).Refusal!.Reason);
    }

    [Fact]
    public void Rank_correlations_do_not_change_under_a_rising_transformation() =>
        Gen.Select(Gen.Int[-30, 30].Array[8], Gen.Int[-30, 30].Array[8]).Sample((tenths, others) =>
        {
            double[] x = [.. tenths.Select(tenth => tenth / 10.0)], y = [.. others.Select(tenth => tenth / 10.0)];
            if (x.Distinct().Count() == 1 || y.Distinct().Count() == 1) return;
            double[] bent = [.. y.Select(Math.Exp)];
            Assert.Equal(KendallCorrelation.Fit(x, y).GetOrThrow().PValue, KendallCorrelation.Fit(x, bent).GetOrThrow().PValue);
            Assert.Equal(SpearmanCorrelation.Fit(x, y).GetOrThrow().PValue, SpearmanCorrelation.Fit(x, bent).GetOrThrow().PValue, 1e-12);
        }, iter: 20);

    private static (double[] X, double[] Y) Pairs(string item) =>
        (ReferenceData.Column("robust", item + ".csv", "x"), ReferenceData.Column("robust", item + ".csv", "y"));
}
