using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class AncovaTests
{
    private const string Item = "anorexia_ancova";

    // emmeans 1.8.4.1 on lm(Postwt ~ Prewt + Treat), MASS::anorexia (Hand et al. 1993).
    [Fact]
    public void Adjusted_means_match_emmeans()
    {
        foreach (var (row, got) in ReferenceData.Values("regression", Item, "emmeans").EnumerateArray().Zip(Fit().AdjustedMeans))
        {
            Assert.Equal(row.GetProperty("Treat").GetString(), got.Name);
            ReferenceData.AssertClose(row.Number("emmean"), got.Value, 1e-8);
            ReferenceData.AssertClose(row.Number("SE"), got.StandardError, 1e-8);
            ReferenceData.AssertClose(row.Number("lower.CL"), got.Interval(ConfidenceLevel.NinetyFive).Lower, 1e-8);
            ReferenceData.AssertClose(row.Number("upper.CL"), got.Interval(ConfidenceLevel.NinetyFive).Upper, 1e-8);
            ReferenceData.AssertClose(row.Number("t.ratio"), got.T!.Value, 1e-8);
            Assert.Equal(row.Number("df"), got.DegreesOfFreedom);
            ReferenceData.AssertClose(row.Number("p.value"), got.PValue!.Value, 1e-8);
        }
    }

    // emmeans 1.8.4.1: pairs(e, adjust = "none"), "tukey", "holm", infer = TRUE; it subtracts the other way round.
    [Theory]
    [InlineData("contrasts", PairwiseAdjustment.None, 1e-8)]
    [InlineData("contrasts_tukey", PairwiseAdjustment.Tukey, 1e-4)]
    [InlineData("contrasts_holm", PairwiseAdjustment.Holm, 1e-8)]
    public void Contrasts_of_adjusted_means_match_emmeans(string block, PairwiseAdjustment adjustment, double relative)
    {
        var rows = ReferenceData.Values("regression", Item, block).EnumerateArray().ToArray();
        var comparisons = Fit().Comparisons(adjustment, ConfidenceLevel.NinetyFive);
        Assert.Equal(rows.Length, comparisons.Count);
        foreach (var (row, got) in rows.Zip(comparisons))
        {
            Assert.Equal(row.GetProperty("contrast").GetString(), $"{got.First} - {got.Second}");
            ReferenceData.AssertClose(row.Number("estimate"), -got.Difference.Value, 1e-8);
            ReferenceData.AssertClose(row.Number("SE"), got.Difference.StandardError, 1e-8);
            ReferenceData.AssertClose(row.Number("t.ratio"), -got.Difference.T!.Value, 1e-8);
            Assert.Equal(row.Number("df"), got.Difference.DegreesOfFreedom);
            ReferenceData.AssertClose(row.Number("p.value"), got.AdjustedPValue, relative);
            ReferenceData.AssertClose(row.Number("lower.CL"), -got.Interval.Upper, relative);
            ReferenceData.AssertClose(row.Number("upper.CL"), -got.Interval.Lower, relative);
        }
    }

    // R 4.2.2: summary(lm(Postwt - Prewt ~ Treat))$coefficients.
    [Fact]
    public void Change_scores_by_group_match_R()
    {
        var table = ReferenceData.Text("regression", Item + ".csv");
        double[] change = [.. ReferenceData.Column("regression", Item + ".csv", "Postwt").Zip(ReferenceData.Column("regression", Item + ".csv", "Prewt"), (post, pre) => post - pre)];
        var fit = LeastSquares.Fit(change, RegressionDesign.WithIntercept(change.Length).AddFactor("Treat", table["Treat"])).GetOrThrow();
        foreach (var (row, got) in ReferenceData.Values("regression", Item, "change_scores").EnumerateArray().Zip(fit.Coefficients))
        {
            ReferenceData.AssertClose(row.Number("Estimate"), got.Value, 1e-9);
            ReferenceData.AssertClose(row.Number("Std. Error"), got.StandardError, 1e-9);
            ReferenceData.AssertClose(row.Number("t value"), got.T!.Value, 1e-9);
            ReferenceData.AssertClose(row.Number("Pr(>|t|)"), got.PValue!.Value, 1e-9);
        }
    }

    // R 4.2.2: lm(post ~ I(pre - mean(pre)) + group), confint(level = .9), twelve invented athletes.
    [Fact]
    public void Two_groups_of_six_athletes_match_R()
    {
        var got = Ancova.Estimate(
            [323.0, 297.4, 342.9, 309.1, 336.8, 284.6, 324.1, 298.9, 341.8, 310.2, 334.0, 305.9],
            [330.1, 301.2, 352.6, 314.0, 341.8, 287.0, 325.4, 298.7, 344.2, 310.9, 336.6, 305.3],
            [.. Enumerable.Repeat("1", 6), .. Enumerable.Repeat("2", 6)]).GetOrThrow();
        var pair = Assert.Single(got.Comparisons(PairwiseAdjustment.None, ConfidenceLevel.Ninety));
        Assert.Equal(0.917121, got.Slope.Value, 1e-6);
        Assert.Equal(4.372646, Math.Abs(pair.Difference.Value), 1e-6);
        Assert.Equal(0.588582, pair.Difference.StandardError, 1e-6);
        Assert.Equal(9, pair.Difference.DegreesOfFreedom);
    }

    [Fact]
    public void One_group_or_a_baseline_that_the_group_decides_is_refused()
    {
        Assert.Equal(Refusal.TooFewObservations, Ancova.Estimate([1, 2, 3], [1, 2, 3], ["a", "a", "a"]).Refusal!.Reason);
        Assert.Equal(Refusal.WeaklyIdentified, Ancova.Estimate([1, 2, 3, 5], [1, 1, 2, 2], ["a", "a", "b", "b"]).Refusal!.Reason);
    }

    private static Ancova Fit() => Ancova.Estimate(
        ReferenceData.Column("regression", Item + ".csv", "Postwt"),
        ReferenceData.Column("regression", Item + ".csv", "Prewt"),
        ReferenceData.Text("regression", Item + ".csv")["Treat"]).GetOrThrow();
}
