using SquadAnalytics.Change;

namespace SquadAnalytics.Tests.Change;

public sealed class OwnChartTests
{
    private static readonly OwnChartOptions All = new() { Selection = SelectionOptions.KeepAll };
    private static readonly double[] Stable = [322.4, 325.9, 323.1, 326.8, 324.2, 321.7, 325.0, 323.6, 326.1, 322.9];

    [Fact]
    public void Limits_rest_on_moving_ranges_of_the_baseline()
    {
        // R 4.2.2: mean(y); mr <- mean(abs(diff(y))); s <- mr / 1.128; mean(y) + c(-3, 3) * s; 3.267 * mr.
        var chart = OwnChart.Fit(SeasonData.Weekly(Stable), Baseline(9), All).GetOrThrow();
        Assert.Equal(324.17, chart.Limits.Centre, 1e-9);
        Assert.Equal(2.833333, chart.Limits.MeanMovingRange, 5e-7);
        Assert.Equal(2.511820, chart.Limits.Sigma, 5e-7);
        Assert.Equal(316.6345, chart.Limits.Lower, 5e-5);
        Assert.Equal(331.7055, chart.Limits.Upper, 5e-5);
        Assert.Equal(9.2565, chart.Limits.MovingRangeUpper, 5e-5);
        Assert.True(chart.IsProvisional);
        Assert.Empty(chart.Signals);
    }

    [Fact]
    public void A_test_beyond_the_frozen_limits_is_a_signal()
    {
        // Hand arithmetic: 332 lies above 331.7055, 331 does not; the limits stay those of the first ten tests.
        var chart = OwnChart.Fit(SeasonData.Weekly([.. Stable, 331, 332]), Baseline(9), All).GetOrThrow();
        Assert.Equal(324.17, chart.Limits.Centre, 1e-9);
        Assert.Equal(11, chart.Points.ToList().FindIndex(point => point.IsBeyondLimits));
        Assert.Single(chart.Signals);
    }

    [Fact]
    public void Eight_tests_in_a_row_on_one_side_are_a_signal_but_not_across_a_long_gap()
    {
        // Hand arithmetic: the tenth baseline test lies below the centre 324.17, so seven more below it make eight.
        double[] below = [323, 322, 323, 322, 323, 322, 323];
        Assert.Equal(16, OwnChart.Fit(SeasonData.Weekly([.. Stable, .. below]), Baseline(9), All).GetOrThrow().Points.ToList().FindIndex(point => point.EndsOneSidedRun));
        var weeks = Enumerable.Range(0, 17).Select(test => test < 13 ? test : test + 3).ToArray();
        Assert.Empty(OwnChart.Fit(SeasonData.Of(weeks, [.. Stable, .. below]), Baseline(9), All).GetOrThrow().Signals);
    }

    [Fact]
    public void Moving_ranges_over_more_than_two_weeks_do_not_count()
    {
        // Hand arithmetic: without the range from the fifth test to the sixth (2.5) the mean of the others is (25.5 - 2.5) / 8.
        var weeks = Enumerable.Range(0, 10).Select(test => test < 5 ? test : test + 2).ToArray();
        Assert.Equal(23.0 / 8, OwnChart.Fit(SeasonData.Of(weeks, Stable), Baseline(11), All).GetOrThrow().Limits.MeanMovingRange, 1e-9);
    }

    [Fact]
    public void A_trending_baseline_is_pointed_out_and_its_residuals_can_be_charted()
    {
        var plain = OwnChart.Fit(SeasonData.Season, Baseline(11), All).GetOrThrow();
        Assert.Contains(plain.Notes, note => note.Contains("has a trend", StringComparison.Ordinal));
        var chart = OwnChart.Fit(SeasonData.Season, Baseline(11), All with { AboutTrend = true }).GetOrThrow();
        Assert.Equal(0, chart.Limits.Centre, 1e-9);
        Assert.Equal(SeasonTrend.Fit(SeasonData.Season, new SeasonTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow().Points[3].ResidualSeconds, chart.Points[3].ValueSeconds);
    }

    [Fact]
    public void Thin_baselines_are_refused()
    {
        Assert.Equal("Not enough data for the chart limits: needs 8 eligible sessions in autumn, has 7 eligible sessions in autumn.", OwnChart.Fit(SeasonData.Weekly(Stable), Baseline(6), All).ToString());
        Assert.Equal(Refusal.ZeroVariance, OwnChart.Fit(SeasonData.Weekly([320, 320, 320, 320, 320, 320, 320, 320]), Baseline(9), All).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => new ChartBaseline(" ", new DateOnly(2031, 1, 7), new DateOnly(2031, 2, 7)));
    }

    private static ChartBaseline Baseline(int lastWeek) => new("autumn", new DateOnly(2031, 1, 7), new DateOnly(2031, 1, 7).AddDays(7 * lastWeek));
}
