using SquadAnalytics.Change;

namespace SquadAnalytics.Tests.Change;

public sealed class BlockTests
{
    private static readonly TrainingBlock First = new("b1", "first", new DateOnly(2031, 1, 7), new DateOnly(2031, 2, 7));
    private static readonly TrainingBlock Second = new("b2", "second", new DateOnly(2031, 3, 1), new DateOnly(2031, 5, 1));
    private static readonly IReadOnlyList<Session> Seven =
    [
        .. Own("A", [330.1, 327.4, 329.0], [322.5, 324.0, 321.1, 323.2]), .. Own("B", [301.2, 299.8, 300.5, 298.9], [297.0, 295.2]), .. Own("C", [352.6, 349.9], [340.7, 343.9, 341.5]),
        .. Own("D", [314.0, 311.2, 313.3], [309.8, 307.1, 308.2, 306.6]), .. Own("E", [341.8, 343.0, 340.1, 339.5], [338.0, 336.4, 337.7]),
        .. Own("F", [287.0, 285.1, 286.6], [284.9, 283.0, 285.5, 282.6]), .. Own("G", [362.0, 358.3, 360.9], [349.8, 351.6]),
    ];

    [Fact]
    public void The_mean_difference_and_its_companions_match_R()
    {
        // R 4.2.2: t.test(d, conf.level = .9); wilcox.test(d, conf.int = TRUE, conf.level = .9); metafor::rma(d, v, method = "REML", test = "knha").
        var result = BlockComparison.Fit([.. Seven, WorkedData.Total(300, 0, "Z")], First, Second, new BlockComparisonOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(-5.703571, result.Change.Value, 5e-7);
        Assert.Equal(-7.779986, result.Change.Lower!.Value, 5e-7);
        Assert.Equal(0.0017653, result.Change.PValue!.Value, 5e-8);
        Assert.Equal(-1.710450, result.RelativeChange.Value, 5e-7);
        Assert.Equal(1.3926693, result.WithinBlock.GetOrThrow().Value, 5e-8);
        Assert.Equal(30, result.WithinBlock.GetOrThrow().DegreesOfFreedom);
        Assert.Equal(-5.6477, result.WeightedChange.GetOrThrow().Value, 5e-5);
        // R 4.2.2, metafor: rma(..., method = "REML")$tau2 = 6.4366.
        Assert.Equal(Math.Sqrt(6.4366), result.SpreadOfTrueChanges.GetOrThrow().Value, 5e-5);
        Assert.Equal(-5.622917, result.RankChange.GetOrThrow().Value, 5e-7);
        Assert.Equal(-7.916667, result.RankChange.GetOrThrow().Lower!.Value, 5e-7);
        Assert.Equal(0.015625, result.SignFlipPValue.GetOrThrow().Value, 1e-12);
        Assert.Equal(-0.181457, result.Standardized[0].G, 5e-7);
        Assert.Equal(-0.217763, result.Standardized[1].D, 5e-7);
        Assert.Equal(-1.754280, result.Standardized[2].G, 5e-7);
        Assert.Equal("no eligible test in the second block", Assert.Single(result.LeftOut).Reason);
    }

    [Fact]
    public void The_mixed_model_lets_athletes_differ()
    {
        // R 4.2.2: lmerTest::lmer(y ~ block + (block | athlete)); (1 | athlete).
        var result = BlockModel.Fit(Seven, First, Second, new BlockModelOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(-5.632235, result.Change.Value, 1e-4);
        Assert.Equal(1.055659, result.Change.StandardError!.Value, 1e-4);
        Assert.Equal(0.569729, BlockModel.Fit(Seven, First, Second, new BlockModelOptions { Selection = SelectionOptions.KeepAll, AthletesDiffer = false }).GetOrThrow().Change.StandardError!.Value, 1e-5);
    }

    [Fact]
    public void Groups_are_compared_at_equal_times_before()
    {
        // R 4.2.2: lm(post ~ pre + group); t.test(change ~ group).
        double[] pre = [330.1, 301.2, 352.6, 314.0, 341.8, 287.0, 325.4, 298.7, 344.2, 310.9, 336.6, 305.3], post = [323.0, 297.4, 342.9, 309.1, 336.8, 284.6, 324.1, 298.9, 341.8, 310.2, 334.0, 305.9];
        var rows = pre.Select((before, i) => new BeforeAndAfter($"a{i}", i < 6 ? "one" : "two", new Seconds(before), new Seconds(post[i]))).ToArray();
        var result = GroupDifference.Fit(rows, "two").GetOrThrow();
        Assert.Equal(-4.372646, result.Difference.Value, 5e-7);
        Assert.Equal(-5.451583, result.Difference.Lower!.Value, 5e-7);
        Assert.Equal(0.917121, result.Slope.Value, 5e-7);
        Assert.Equal(-6.671807, result.DifferenceOfChanges.Lower!.Value, 5e-7);
        Assert.Equal(Refusal.TooFewAthletes, GroupDifference.Fit(rows[1..], "two").Refusal!.Reason);
    }

    [Fact]
    public void A_series_jumps_and_bends_at_the_named_date()
    {
        // R 4.2.2: lm(y ~ t + P + I(P * (t - 8))); sandwich::NeweyWest(fit, lag = 2, prewhite = FALSE, adjust = TRUE); lmtest::dwtest.
        var series = SeasonData.Weekly(331.0, 330.2, 330.4, 329.1, 328.0, 328.3, 327.6, 327.9, 323.9, 323.1, 321.4, 322.0, 321.3, 319.6, 318.4, 318.9);
        var options = new InterruptedSeriesOptions { Selection = SelectionOptions.KeepAll };
        var result = InterruptedSeries.Fit(series, series[8].Date, options).GetOrThrow();
        Assert.Equal(-0.501190, result.SlopeBefore.Value, 5e-7);
        Assert.Equal(-3.040476, result.LevelChange.Value, 5e-7);
        Assert.Equal(-4.055756, result.LevelChange.Lower!.Value, 5e-7);
        Assert.Equal(-0.267857, result.SlopeChange.Value, 5e-7);
        Assert.Equal(0.362979, result.SerialLevelChange.StandardError!.Value, 5e-7);
        Assert.Equal(2.240227, result.DurbinWatson!.Value, 5e-7);
        Assert.Equal(-4.915476, result.EffectAtEnd.Value, 5e-7);
        Assert.Equal(Refusal.TooFewPerSegment, InterruptedSeries.Fit(series, series[12].Date, options).Refusal!.Reason);
    }

    [Fact]
    public void Too_few_athletes_and_overlapping_blocks_are_refused()
    {
        Assert.Equal(Refusal.TooFewAthletes, BlockComparison.Fit([.. Seven.Where(session => session.AthleteId is "A" or "B" or "C")], First, Second).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => BlockComparison.Fit(Seven, Second, First));
    }

    private static IEnumerable<Session> Own(string athlete, double[] first, double[] second) =>
        first.Select((total, week) => WorkedData.Total(total, week, athlete)).Concat(second.Select((total, week) => WorkedData.Total(total, week + 10, athlete)));
}
