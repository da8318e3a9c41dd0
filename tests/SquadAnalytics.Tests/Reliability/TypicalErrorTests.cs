using CsCheck;
using SquadAnalytics.Reliability;
using SquadAnalytics.SampleSquad;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Reliability;

public sealed class TypicalErrorTests
{
    private static readonly TypicalErrorOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void More_tests_than_a_design_takes_are_refused_where_a_window_holds_them_all()
    {
        var sessions = WorkedData.Weekly([.. Enumerable.Range(0, 4).Select(athlete => Enumerable.Range(0, 302).Select(week => week == 5 + athlete ? double.NaN : 300 + (10 * athlete) + (week % (7 + athlete))).ToArray())]);
        Assert.Equal("Too much data for the typical error: needs at most 301 tests in a window, has 302 tests in a window.", TypicalError.Fit(sessions, All with { WindowLength = null }).ToString());
        Assert.True(TypicalError.Fit(sessions, All).IsEstimated);
    }

    [Fact]
    public void The_typical_error_of_eight_athletes_and_four_tests_matches_R()
    {
        // R 4.2.2: anova(lm(total ~ athlete + test)); sqrt(6.5038839); sqrt(21 * 6.5038839 / qchisq(c(.95, .05), 21)), c(.975, .025); the same on log(total).
        var result = TypicalError.Fit(WorkedData.EightAthletes, All).GetOrThrow();
        Assert.Equal(2.5502713, result.Estimate.Value, 5e-8);
        Assert.Equal(6.5038839, result.Estimate.Value * result.Estimate.Value, 5e-8);
        Assert.Equal(21, result.DegreesOfFreedom);
        Assert.Equal(2.0446438, result.Estimate.Lower!.Value, 5e-8);
        Assert.Equal(3.4326527, result.Estimate.Upper!.Value, 5e-8);
        var variation = result.Variation.GetOrThrow();
        Assert.Equal(0.752654, variation.Value, 5e-7);
        Assert.Equal(0.602981, variation.Lower!.Value, 5e-7);
        Assert.Equal(1.014385, variation.Upper!.Value, 5e-7);
        Assert.Equal(8, result.Athletes);
        var wide = TypicalError.Fit(WorkedData.EightAthletes, All with { Level = ConfidenceLevel.NinetyFive }).GetOrThrow().Estimate;
        Assert.Equal(1.962055, wide.Lower!.Value, 5e-7);
        Assert.Equal(3.644503, wide.Upper!.Value, 5e-7);
    }

    [Fact]
    public void Dropping_the_first_test_as_familiarisation_is_the_default_and_is_said()
    {
        // R 4.2.2: the same without test 1.
        var result = TypicalError.Fit(WorkedData.EightAthletes).GetOrThrow();
        Assert.Equal(2.467588, result.Estimate.Value, 5e-7);
        Assert.Contains(result.Estimate.Notes, note => note.Contains("familiarisation", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("generated_12x4")]
    [InlineData("weir_a")]
    [InlineData("shrout_fleiss")]
    [InlineData("peakflow_wright")]
    public void Published_tables_give_the_typical_error_of_R(string item)
    {
        var table = ReferenceTable.Load(item);
        var values = ReferenceData.Values("reliability", item, "typical_error_all_trials");
        var percent = ReferenceData.Values("reliability", item, "typical_error_percent_all_trials");
        var result = TypicalError.Fit(ReferenceTable.Sessions(table), All with { Level = ConfidenceLevel.NinetyFive }).GetOrThrow();
        void Same(ReferenceValue expected, string name, double got) => ReferenceData.AssertClose(expected.GetProperty(name).GetDouble(), got, 1e-9, what: $"{item} {name}");
        Same(values, "typical_error", result.Estimate.Value);
        Same(values, "lower95", result.Estimate.Lower!.Value);
        Same(values, "upper95", result.Estimate.Upper!.Value);
        Same(values, "df", result.DegreesOfFreedom);
        var variation = result.Variation.GetOrThrow();
        Same(percent, "typical_error", variation.Value);
        Same(percent, "lower95", variation.Lower!.Value);
        Same(percent, "upper95", variation.Upper!.Value);
        Same(percent, "df", variation.DegreesOfFreedom!.Value);
    }

    [Theory]
    [InlineData("weir_a")]
    [InlineData("peakflow_wright")]
    public void Two_tests_give_the_typical_error_of_paired_differences(string item)
    {
        var expected = ReferenceData.Values("reliability", item, "typical_error");
        var result = TypicalError.Fit(ReferenceTable.Sessions(ReferenceTable.Load(item)), All with { Level = ConfidenceLevel.NinetyFive }).GetOrThrow();
        ReferenceData.AssertClose(expected.GetProperty("typical_error").GetDouble(), result.Estimate.Value, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("lower95").GetDouble(), result.Estimate.Lower!.Value, 1e-9);
        var percent = ReferenceData.Values("reliability", item, "typical_error_percent");
        ReferenceData.AssertClose(percent.GetProperty("cv_percent").GetDouble(), result.Variation.GetOrThrow().Value, 1e-9);
        ReferenceData.AssertClose(percent.GetProperty("upper95").GetDouble(), result.Variation.GetOrThrow().Upper!.Value, 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("mdc95").GetDouble(), Change(result, DetectionFactor.Conventional), 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("mdc95_exact_z").GetDouble(), Change(result, DetectionFactor.Normal), 1e-9);
        ReferenceData.AssertClose(expected.GetProperty("mdc95_t").GetDouble(), Change(result, DetectionFactor.StudentT), 1e-9);
    }

    [Fact]
    public void Absences_keep_the_residuals_of_least_squares_with_athlete_and_test_effects()
    {
        double[][] totals = [[329.0, double.NaN, 327.1, 322.9], [298.4, 301.0, 296.2, double.NaN], [356.1, 349.5, 352.0, 345.3], [312.7, 309.9, double.NaN, 306.4]];
        var sessions = WorkedData.Weekly(totals);
        var result = TypicalError.Fit(sessions, All).GetOrThrow();
        // The general two-way analysis of this library's least squares, itself checked against certified data, on the same cells.
        var anova = TwoWayAnova.Fit([.. sessions.Select(session => session.Total.GetOrThrow().Value)], [.. sessions.Select(session => session.AthleteId)], [.. sessions.Select(session => session.Date.ToString("O", System.Globalization.CultureInfo.InvariantCulture))]).GetOrThrow();
        Assert.Equal(anova.ResidualStandardDeviation, result.Estimate.Value, 1e-10);
        Assert.Equal(anova.DegreesOfFreedom, result.DegreesOfFreedom);
    }

    [Fact]
    public void The_mixed_model_gives_the_same_noise_where_nobody_was_absent()
    {
        // R 4.2.2, lme4: sigma(lmer(total ~ factor(test) + (1 | athlete))) of the complete table equals sqrt(MSE) = 2.5502713.
        Assert.Equal(2.5502713, TypicalError.OfMixedModel(WorkedData.EightAthletes, All).GetOrThrow().Value, 5e-6);
        double[][] absent = [[329.0, double.NaN, 327.1, 322.9], [298.4, 301.0, 296.2, double.NaN], [356.1, 349.5, 352.0, 345.3], [312.7, 309.9, double.NaN, 306.4]];
        var leastSquares = TypicalError.Fit(WorkedData.Weekly(absent), All).GetOrThrow().Estimate.Value;
        Assert.InRange(TypicalError.OfMixedModel(WorkedData.Weekly(absent), All).GetOrThrow().Value, 0.9 * leastSquares, 1.1 * leastSquares);
        Assert.Equal(Refusal.TooFewPairs, TypicalError.OfMixedModel(WorkedData.Weekly([300, 301]), All).Refusal!.Reason);
    }

    // Balanced data: REML's residual variance is the mean square of least squares (textbook). With so many test effects rounding leaves numbers whose squares underflow.
    [Fact]
    public void Eighty_complete_tests_have_the_same_noise_by_both_ways()
    {
        var random = new SeededRandom(1);
        var sessions = WorkedData.Weekly([.. Enumerable.Range(0, 3).Select(athlete => Enumerable.Range(0, 80).Select(_ => Math.Round(320 + 5 * athlete + 3 * random.NextNormal(), 1)).ToArray())]);
        var options = new TypicalErrorOptions { Selection = SelectionOptions.KeepAll };
        Assert.Equal(TypicalError.Fit(sessions, options).GetOrThrow().Estimate.Value, TypicalError.OfMixedModel(sessions, options).GetOrThrow().Value, 1e-5);
    }

    [Fact]
    public void One_athletes_own_noise_is_the_residual_about_the_trend()
    {
        // R 4.2.2: summary(lm(total ~ week))$sigma = 1.171616 on 8 degrees of freedom; ten tests in twelve weeks with two gaps.
        int[] weeks = [0, 1, 2, 3, 5, 6, 7, 9, 10, 11];
        double[] totals = [331.2, 330.4, 327.1, 328.0, 327.3, 323.6, 324.5, 322.9, 319.8, 321.2];
        IReadOnlyList<Session> own = [.. weeks.Zip(totals, (week, total) => WorkedData.Total(total, week))];
        var result = TypicalError.OfOneAthlete(own, All).GetOrThrow();
        Assert.Equal(1.171616, result.Estimate.Value, 5e-7);
        Assert.Equal(8, result.DegreesOfFreedom);
        Assert.Equal(Refusal.TooFewSessions, TypicalError.OfOneAthlete([.. own.Take(9)], All).Refusal!.Reason);
    }

    [Fact]
    public void Windows_keep_differing_trends_out_of_the_noise()
    {
        // By construction: each athlete drifts by a slope of SD 0.4 s a week over 30 weeks with noise of SD 2.5 s; the two-way analysis of the
        // whole season has expectation sqrt(2.5² + 0.4² · 77.5) = 4.32, windows of 4 tests sqrt(2.5² + 0.4² · 1.67) = 2.55.
        var random = new SeededRandom(11);
        double[][] totals = [.. Enumerable.Range(0, 24).Select(athlete =>
        {
            var slope = 0.4 * random.NextNormal();
            return Enumerable.Range(0, 30).Select(week => 320 + 3 * athlete + slope * week + 2.5 * random.NextNormal()).ToArray();
        })];
        var sessions = WorkedData.Weekly(totals);
        var windows = TypicalError.Fit(sessions, All).GetOrThrow();
        var season = TypicalError.Fit(sessions, All with { WindowLength = null }).GetOrThrow();
        Assert.Equal(2.55, windows.Estimate.Value, 0.2);
        Assert.Equal(4.32, season.Estimate.Value, 1.0);
        Assert.Equal(8, windows.Windows);
        Assert.Equal(23 * 22, windows.DegreesOfFreedom);
        Assert.Contains(season.Estimate.Notes, note => note.Contains("includes differing trends", StringComparison.Ordinal));
    }

    [Fact]
    public void A_block_of_thirteen_tests_makes_windows_of_three_three_three_and_four()
    {
        // R 4.2.2, from the sample's CSV files: blocks of 12 and 13 weeks with a test; in each window of 4, 4, 4 and of 3, 3, 3, 4, athletes with two tests or more: m <- lm(total ~ athlete + week);
        // sqrt(sum of deviance(m) / sum of m$df.residual).
        var error = TypicalError.Fit(SquadGenerator.Generate(Scenarios.Quillmere).Squad, new() { Selection = new SelectionOptions { Protocol = Scenarios.Quillmere.MainTest.Protocol } }).GetOrThrow();
        Assert.Equal(7, error.Windows);
        Assert.Equal(214, error.DegreesOfFreedom);
        Assert.Equal(341, error.Estimate.Observations);
        Assert.Equal(3.91187973842, error.Estimate.Value, 5e-10);
        Assert.Equal(0.0107530197569, Math.Log(1 + error.Variation.GetOrThrow().Value / 100), 5e-12);
    }

    [Fact]
    public void A_window_never_reaches_from_one_block_into_another()
    {
        // Hand arithmetic: within each block of two tests every athlete changes alike, so a window inside a block has no residual; the change differs between blocks.
        var sessions = WorkedData.Weekly([300, 299, 290, 291], [310, 309, 304, 305], [320, 319, 318, 319.6]);
        var first = sessions[0].Date;
        IReadOnlyList<TrainingBlock> blocks = [new TrainingBlock("1", "One", first, first.AddDays(10)), new TrainingBlock("2", "Two", first.AddDays(11), first.AddDays(30))];
        var result = TypicalError.Fit(sessions, All with { Blocks = blocks }).GetOrThrow();
        Assert.Equal(2, result.Windows);
        Assert.Equal(4, result.DegreesOfFreedom);
        // Differences of the second block: 1, 1, 1.6 with SD 0.34641; TE² over both blocks = (0 + 2 · 0.06) / 4.
        Assert.Equal(Math.Sqrt(0.03), result.Estimate.Value, 1e-9);
        Assert.Equal("B3", result.LargestContributor);
    }

    [Fact]
    public void Too_few_athletes_or_no_variation_are_refused()
    {
        Assert.Equal("Not enough data for the typical error: needs 3 athletes with two tests in a window, has 2 athletes with two tests in a window.",
            TypicalError.Fit(WorkedData.Weekly([300, 301], [310, 312], [320, double.NaN]), All).ToString());
        Assert.Equal(Refusal.ZeroVariance, TypicalError.Fit(WorkedData.Weekly([300, 300], [310, 310], [320, 320]), All).Refusal!.Reason);
        Assert.Contains(TypicalError.Fit(WorkedData.Weekly([300, 301], [310, 312], [320, 321]), All).GetOrThrow().Estimate.Notes, note => note.Contains("3 athletes only", StringComparison.Ordinal));
    }

    [Fact]
    public void A_measure_in_percent_has_no_coefficient_of_variation()
    {
        IReadOnlyList<Session> sessions = [.. Enumerable.Range(0, 4).SelectMany(athlete => Enumerable.Range(0, 3).Select(week => WorkedData.One([60, 61 + week * 0.3, 62, 63 + athlete * week * 0.2, 64], week, $"a{athlete}")))];
        var result = TypicalError.Fit(sessions, All with { Measure = SessionMeasure.Decrement }).GetOrThrow();
        Assert.Equal(Unit.Percent, result.Estimate.Unit);
        Assert.Equal(Refusal.NotComparable, result.Variation.Refusal!.Reason);
    }

    [Fact]
    public void Shifting_scaling_reordering_and_dropping_single_tests_do_what_they_must() =>
        Gen.Select(Gen.Double[280, 380].Array[4].Array[3, 8], Gen.Double[1, 40], Gen.Double[0.2, 5]).Sample((totals, shift, factor) =>
        {
            var before = TypicalError.Fit(WorkedData.Weekly(totals), All).GetOrThrow();
            var shifted = TypicalError.Fit(WorkedData.Weekly([.. totals.Select(row => row.Select(total => total + shift).ToArray())]), All).GetOrThrow();
            var scaled = TypicalError.Fit(WorkedData.Weekly([.. totals.Select(row => row.Select(total => total * factor).ToArray())]), All).GetOrThrow();
            IReadOnlyList<Session> turned = [.. WorkedData.Weekly(totals).Reverse(), WorkedData.Total(500, 2, "once")];
            Assert.Equal(before.Estimate.Value, shifted.Estimate.Value, 1e-8);
            Assert.Equal(before.Estimate.Value * factor, scaled.Estimate.Value, 1e-7);
            Assert.Equal(before.Variation.GetOrThrow().Value, scaled.Variation.GetOrThrow().Value, 1e-8);
            Assert.Equal(before.Estimate.Value, TypicalError.Fit(turned, All).GetOrThrow().Estimate.Value, 1e-9);
        });

    private static double Change(TypicalErrorResult result, DetectionFactor factor) => MinimalDetectableChange.Fit(result, new MinimalDetectableChangeOptions { Factor = factor }).Value;
}
