using CsCheck;
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
    public void The_mean_difference_of_the_athletes_matches_R()
    {
        // R 4.2.2: d <- block means 2 - 1; t.test(d, conf.level = .9); sd(d); 100 * expm1(t.test(d of log, conf.level = .9)$conf.int).
        var result = Compared([.. Seven, WorkedData.Total(300, 0, "Z")]);
        double[] changes = [-6.133333, -4.0, -9.216667, -4.908333, -3.733333, -2.233333, -9.7];
        for (var i = 0; i < changes.Length; i++) Assert.Equal(changes[i], result.Athletes[i].ChangeSeconds, 5e-7);
        Assert.Equal(-5.703571, result.Change.Value, 5e-7);
        Assert.Equal(-7.779986, result.Change.Lower!.Value, 5e-7);
        Assert.Equal(-3.627157, result.Change.Upper!.Value, 5e-7);
        Assert.Equal(6, result.Change.DegreesOfFreedom);
        Assert.Equal(-5.3376, result.Change.Value / result.Change.StandardError!.Value, 5e-5);
        Assert.Equal(0.0017653, result.Change.PValue!.Value, 5e-8);
        Assert.Equal(2.827158, result.StandardDeviationOfChanges.Value, 5e-7);
        Assert.Equal(-1.710450, result.RelativeChange.Value, 5e-7);
        Assert.Equal(-2.248117, result.RelativeChange.Lower!.Value, 5e-7);
        Assert.Equal(-1.169825, result.RelativeChange.Upper!.Value, 5e-7);
        Assert.Equal("no eligible test in the second block", Assert.Single(result.LeftOut).Reason);

        // R 4.2.2: t.test(d, conf.level = .95)$conf.int.
        var student = BlockComparison.Fit(Seven, First, Second, new BlockComparisonOptions { Level = ConfidenceLevel.NinetyFive, Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(-8.318256, student.Change.Lower!.Value, 5e-7);
        Assert.Equal(-3.088887, student.Change.Upper!.Value, 5e-7);
    }

    [Fact]
    public void The_weighted_difference_matches_R()
    {
        // R 4.2.2: pooled SD within athletes and blocks; metafor::rma(d, v, method = "REML", test = "knha", level = 90).
        var result = Compared(Seven);
        Assert.Equal(1.3926693, result.WithinBlock.GetOrThrow().Value, 5e-8);
        Assert.Equal(30, result.WithinBlock.GetOrThrow().DegreesOfFreedom);
        var weighted = result.WeightedChange.GetOrThrow();
        Assert.Equal(-5.6477, weighted.Value, 5e-5);
        Assert.Equal(1.0601, weighted.StandardError!.Value, 5e-5);
        Assert.Equal(-7.7076, weighted.Lower!.Value, 5e-5);
        Assert.Equal(-3.5877, weighted.Upper!.Value, 5e-5);
        ReferenceData.AssertClose(6.4366, Math.Pow(result.SpreadOfTrueChanges.GetOrThrow().Value, 2), 1e-4);
    }

    [Fact]
    public void The_rank_based_companions_match_R()
    {
        // R 4.2.2: wilcox.test(d, conf.int = TRUE, conf.level = .9); 1 - 2 * psignrank(3, 7) = 0.921875; sign flips: 2 of 128 means at least as large.
        var result = Compared(Seven);
        var ranked = result.RankChange.GetOrThrow();
        Assert.Equal(-5.622917, ranked.Value, 5e-7);
        Assert.Equal(-7.916667, ranked.Lower!.Value, 5e-7);
        Assert.Equal(-3.570833, ranked.Upper!.Value, 5e-7);
        Assert.Equal(0.015625, ranked.PValue!.Value, 1e-12);
        Assert.Contains("The interval's confidence is 92.2 %, the closest above the level that 7 athletes allow.", ranked.Notes);
        Assert.Equal(0.015625, result.SignFlipPValue.GetOrThrow().Value, 1e-12);
        var four = Compared([.. Seven.Where(session => session.AthleteId is "A" or "B" or "C" or "D")]);
        Assert.Equal("Not enough data for the rank-based change: needs 5 athletes, has 4 athletes.", four.RankChange.ToString());
        Assert.Contains("Only 4 athletes: the interval leans on the assumption of normal changes.", four.Notes);
    }

    [Fact]
    public void Effect_sizes_name_the_standard_deviation_that_they_rest_on()
    {
        // R 4.2.2: s1 <- sd(means of block 1); mean(d) / s1; (1 - 3 / 23) * mean(d) / s1; mean(d) / sqrt((s1^2 + s2^2) / 2); (1 - 3 / 23) * mean(d) / sd(d).
        var sizes = Compared(Seven).Standardized;
        Assert.Equal(27.332203, sizes[0].StandardDeviation.Value, 5e-7);
        Assert.Equal(-0.208676, sizes[0].D, 5e-7);
        Assert.Equal(-0.181457, sizes[0].G, 5e-7);
        Assert.Equal("g -0.18 in SDs of the athletes in the first block (trivial)", sizes[0].ToString());
        Assert.Equal(-0.217763, sizes[1].D, 5e-7);
        Assert.Equal(-1.754280, sizes[2].G, 5e-7);
        Assert.Equal("g -1.75 in SDs of the changes (large)", sizes[2].ToString());
    }

    [Theory]
    [InlineData(0.19, "trivial")]
    [InlineData(-0.2, "small")]
    [InlineData(0.6, "moderate")]
    [InlineData(-1.2, "large")]
    [InlineData(2.0, "very large")]
    [InlineData(-4.0, "extremely large")]
    public void Words_of_effect_sizes_begin_at_their_thresholds(double difference, string words) => Assert.Equal(words, EffectSizes.Of(difference).Words());

    [Fact]
    public void The_mixed_model_lets_athletes_differ()
    {
        // R 4.2.2, lme4 and lmerTest: lmer(y ~ block + (block | athlete)): -5.632235, SE 1.055659, df 5.80; SDs 27.272, 2.551, correlation -0.899, residual 1.38963; (1 | athlete): SE 0.569729.
        var result = BlockModel.Fit(Seven, First, Second, new BlockModelOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(-5.632235, result.Change.Value, 1e-4);
        Assert.Equal(1.055659, result.Change.StandardError!.Value, 1e-4);
        Assert.Equal(5.80, result.Change.DegreesOfFreedom!.Value, 0.005);
        Assert.Equal(27.272, result.Model.VarianceComponents[0].StandardDeviation.Value, 5e-3);
        Assert.Equal(2.551, result.Model.VarianceComponents[1].StandardDeviation.Value, 5e-4);
        Assert.Equal(-0.899, result.Model.Correlations[0].Correlation!.Value, 5e-4);
        Assert.Equal(1.38963, result.Model.ResidualStandardDeviation.Value, 1e-4);
        var alike = BlockModel.Fit(Seven, First, Second, new BlockModelOptions { Selection = SelectionOptions.KeepAll, AthletesDiffer = false }).GetOrThrow();
        Assert.Equal(0.569729, alike.Change.StandardError!.Value, 1e-5);
        Assert.Contains("All athletes are taken to change alike: the interval is too narrow if they do not.", alike.Notes);
    }

    [Fact]
    public void With_a_trend_the_block_is_a_jump_beyond_it()
    {
        // R 4.2.2, lme4: lmer(y ~ block + week + (block | athlete)), week from the first day of block 2: block -0.6207635660 (SE 2.3042042003), week -0.5008232858 (0.2042575888): what looked like
        // a block of -5.6 s is a trend of half a second a week, and no jump.
        var result = BlockModel.Fit(Seven, First, Second, new BlockModelOptions { Selection = SelectionOptions.KeepAll, WithTrend = true }).GetOrThrow();
        Assert.Equal(-0.6207635660, result.Change.Value, 1e-3);
        ReferenceData.AssertClose(2.3042042003, result.Change.StandardError!.Value, 1e-4);
        ReferenceData.AssertClose(-0.5008232858, result.Model.Fixed("week").Estimate.Value, 1e-4);
        Assert.Contains("The difference is a jump beyond a straight trend; block and week say nearly the same, so it is uncertain.", result.Notes);
    }

    [Fact]
    public void Groups_are_compared_at_equal_times_before()
    {
        // R 4.2.2: lm(post ~ I(pre - mean(pre)) + group); confint(., level = .9); t.test(change ~ group, conf.level = .9).
        var result = GroupDifference.Fit(Twelve, "two").GetOrThrow();
        Assert.Equal(-4.372646, result.Difference.Value, 5e-7);
        Assert.Equal(0.588582, result.Difference.StandardError!.Value, 5e-7);
        Assert.Equal(-5.451583, result.Difference.Lower!.Value, 5e-7);
        Assert.Equal(-3.293708, result.Difference.Upper!.Value, 5e-7);
        Assert.Equal(9, result.Difference.DegreesOfFreedom);
        Assert.Equal(0.917121, result.Slope.Value, 5e-7);
        Assert.Equal(-4.45, result.DifferenceOfChanges.Value, 1e-9);
        Assert.Equal(-6.671807, result.DifferenceOfChanges.Lower!.Value, 5e-7);
        Assert.Equal(-2.228193, result.DifferenceOfChanges.Upper!.Value, 5e-7);
        Assert.Equal(7.444, result.DifferenceOfChanges.DegreesOfFreedom!.Value, 5e-4);
        Assert.StartsWith("difference between groups", result.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(result.Notes, note => note.Contains("effect", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Small_groups_and_groups_whose_times_before_do_not_overlap_are_refused()
    {
        Assert.Equal("Not enough data for the difference between groups: needs 6 athletes in each group, has 5 athletes in each group.", GroupDifference.Fit(Twelve[1..], "two").ToString());
        var apart = GroupDifference.Fit([.. Twelve.Select(row => row.Group == "two" ? new BeforeAndAfter(row.AthleteId, row.Group, new Seconds(row.Before.Value + 100), new Seconds(row.After.Value + 100)) : row)], "two");
        Assert.Equal(Refusal.NotComparable, apart.Refusal!.Reason);
        Assert.Equal("Not enough data for the difference between groups: needs times before that overlap between groups, has times that do not.", apart.ToString());
    }

    [Fact]
    public void A_series_jumps_and_bends_at_the_named_date()
    {
        // R 4.2.2: lm(y ~ t + P + I(P * (t - 8))); sandwich::NeweyWest(fit, lag = 2, prewhite = FALSE, adjust = TRUE); lmtest::dwtest; sum(e[-1] * e[-16]) / sum(e^2).
        var result = InterruptedSeries.Fit(Sixteen, Sixteen[8].Date, Segments).GetOrThrow();
        Assert.Equal(-0.501190, result.SlopeBefore.Value, 5e-7);
        Assert.Equal(0.086871, result.SlopeBefore.StandardError!.Value, 5e-7);
        Assert.Equal(-3.040476, result.LevelChange.Value, 5e-7);
        Assert.Equal(0.569650, result.LevelChange.StandardError!.Value, 5e-7);
        Assert.Equal(-4.055756, result.LevelChange.Lower!.Value, 5e-7);
        Assert.Equal(-2.025196, result.LevelChange.Upper!.Value, 5e-7);
        Assert.Equal(-0.267857, result.SlopeChange.Value, 5e-7);
        Assert.Equal(0.122854, result.SlopeChange.StandardError!.Value, 5e-7);
        Assert.Equal(0.562987, result.ResidualStandardDeviation.Value, 5e-7);
        Assert.Equal(0.058738, result.SerialSlopeBefore.StandardError!.Value, 5e-7);
        Assert.Equal(0.362979, result.SerialLevelChange.StandardError!.Value, 5e-7);
        Assert.Equal(0.085930, result.SerialSlopeChange.StandardError!.Value, 5e-7);
        Assert.Equal(2.240227, result.DurbinWatson!.Value, 5e-7);
        Assert.Equal(-0.159624, result.SerialCorrelation!.Value, 5e-7);
        Assert.Equal(-4.915476, result.EffectAtEnd.Value, 5e-7);
        Assert.False(result.IsWithoutVerdict);
    }

    [Fact]
    public void Five_to_seven_tests_in_a_segment_are_shown_without_a_verdict()
    {
        // R 4.2.2: the same of tests 3 to 14: -3.1180952381 (SE 0.7097065920).
        var result = InterruptedSeries.Fit(Sixteen[2..14], Sixteen[8].Date, Segments).GetOrThrow();
        Assert.Equal(-3.1180952381, result.LevelChange.Value, 1e-9);
        Assert.Equal(0.7097065920, result.LevelChange.StandardError!.Value, 1e-9);
        Assert.True(result.IsWithoutVerdict);
        Assert.Equal("Only 6 tests in a segment (8 are needed): shown without a verdict.", result.Notes[0]);
        Assert.Equal("Not enough data for the interrupted series: needs 5 tests in each segment, has 4 tests in each segment.", InterruptedSeries.Fit(Sixteen, Sixteen[12].Date, Segments).ToString());
    }

    [Fact]
    public void A_squads_weeks_are_compared_as_if_everybody_had_come()
    {
        // Four athletes with the same series, 10 s apart, each absent every fifth week. R 4.2.2: lm() of the plain weekly means: jump -1.3539682540 (SE 3.6802436190); within athletes the jump is that of the series.
        Session[] squad = [.. Enumerable.Range(0, 4).SelectMany(i => Enumerable.Range(0, 16).Where(week => (i + week) % 5 != 0).Select(week => WorkedData.Total(Sixteen[week].Total.GetOrThrow().Value + 10 * i, week, $"s{i}")))];
        var within = InterruptedSeries.FitSquad(squad, Sixteen[8].Date, Segments).GetOrThrow();
        Assert.Equal(-3.040476, within.LevelChange.Value, 5e-7);
        Assert.Equal(0.569650, within.LevelChange.StandardError!.Value, 5e-7);
        Assert.Equal(346.0, within.Points[0].TotalSeconds, 1e-9); // 331 + (0 + 10 + 20 + 30) / 4
        Assert.Contains("Weeks are compared within athletes, as if everybody had come to each.", within.Notes);
        var plain = InterruptedSeries.FitSquad(squad, Sixteen[8].Date, Segments with { PlainMeans = true }).GetOrThrow();
        Assert.Equal(-1.3539682540, plain.LevelChange.Value, 1e-9);
        Assert.Equal(3.6802436190, plain.LevelChange.StandardError!.Value, 1e-9);
        Session[] apart = [.. squad.Where(session => session.AthleteId is "s1" ? session.Date < Sixteen[8].Date : session.AthleteId is "s2" && session.Date >= Sixteen[8].Date)];
        Assert.Equal(Refusal.NotComparable, InterruptedSeries.FitSquad([.. apart, .. apart.Select(session => session with { Id = session.Id + "b", Occasion = 2 })], Sixteen[8].Date, Segments).Refusal!.Reason);
    }

    [Fact]
    public void Six_years_of_weeks_are_too_many_to_compare_within_athletes()
    {
        // The bound of a design, 300 columns and the week that has none; plain means have no such bound.
        IReadOnlyList<Session> years = [.. SeasonData.Of([.. Enumerable.Range(0, 302)], [.. Enumerable.Range(0, 302).Select(week => 300 + (double)(week % 7))], "s1"), .. SeasonData.Of([.. Enumerable.Range(0, 302)], [.. Enumerable.Range(0, 302).Select(week => 320 + (double)(week % 5))], "s2")];
        var from = years[0].Date.AddDays(7 * 150);
        Assert.Equal("Too much data for the squad's weekly series: needs at most 301 weeks with tests, has 302 weeks with tests.", InterruptedSeries.FitSquad(years, from, Segments).ToString());
        Assert.True(InterruptedSeries.FitSquad(years, from, Segments with { PlainMeans = true }).IsEstimated);
        Assert.True(InterruptedSeries.FitSquad([.. years.Where(session => session.Date < years[301].Date)], from, Segments).IsEstimated);
    }

    [Fact]
    public void A_shift_of_all_totals_changes_no_difference() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[0.5, 2], Gen.Shuffle(Seven.ToArray())).Sample((shift, factor, shuffled) =>
        {
            var (plain, moved, scaled) = (Compared(Seven), Compared(SeasonData.Changed(shuffled, total => total + shift)), Compared(SeasonData.Changed(Seven, total => total * factor)));
            Assert.Equal(plain.Change.Lower!.Value, moved.Change.Lower!.Value, 1e-8);
            Assert.Equal(factor * plain.Change.Upper!.Value, scaled.Change.Upper!.Value, 1e-8);
            Assert.Equal(plain.RelativeChange.Value, scaled.RelativeChange.Value, 1e-8);
            Assert.Equal(plain.Standardized[0].G, scaled.Standardized[0].G, 1e-8);
            Assert.Equal(plain.RankChange.GetOrThrow().PValue, moved.RankChange.GetOrThrow().PValue);
        }, iter: 50);

    [Fact]
    public void Too_few_athletes_and_overlapping_blocks_are_refused()
    {
        Assert.Equal(Refusal.TooFewAthletes, BlockComparison.Fit([.. Seven.Where(session => session.AthleteId is "A" or "B" or "C")], First, Second).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => BlockComparison.Fit(Seven, Second, First));
    }

    private static BeforeAndAfter[] Twelve { get; } =
    [
        .. new (double Before, double After)[]
        {
            (330.1, 323.0), (301.2, 297.4), (352.6, 342.9), (314.0, 309.1), (341.8, 336.8), (287.0, 284.6), (325.4, 324.1), (298.7, 298.9), (344.2, 341.8), (310.9, 310.2), (336.6, 334.0), (305.3, 305.9),
        }.Select((row, i) => new BeforeAndAfter($"a{i}", i < 6 ? "one" : "two", new Seconds(row.Before), new Seconds(row.After))),
    ];

    private static Session[] Sixteen { get; } =
        [.. SeasonData.Weekly(331.0, 330.2, 330.4, 329.1, 328.0, 328.3, 327.6, 327.9, 323.9, 323.1, 321.4, 322.0, 321.3, 319.6, 318.4, 318.9)];

    private static InterruptedSeriesOptions Segments { get; } = new() { Selection = SelectionOptions.KeepAll };

    private static BlockComparisonResult Compared(IReadOnlyList<Session> sessions) => BlockComparison.Fit(sessions, First, Second, new BlockComparisonOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();

    private static IEnumerable<Session> Own(string athlete, double[] first, double[] second) =>
        first.Select((total, week) => WorkedData.Total(total, week, athlete)).Concat(second.Select((total, week) => WorkedData.Total(total, week + 10, athlete)));
}
