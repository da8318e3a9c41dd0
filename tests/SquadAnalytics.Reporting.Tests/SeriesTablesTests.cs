using SquadAnalytics.Change;
using SquadAnalytics.Reporting.Tests.Figures;

namespace SquadAnalytics.Reporting.Tests;

public class SeriesTablesTests
{
    private static readonly double[] Totals = [331.0, 330.2, 330.4, 329.1, 328.0, 328.3, 327.6, 327.9, 323.9, 323.1, 321.4, 322.0, 321.3, 319.6, 318.4, 318.9];

    private static readonly DateOnly Start = new(2031, 1, 7);

    private static Session[] Series => Weekly(Totals);

    private static Session[] Weekly(double[] totals) => [.. totals.Select((total, week) => Session.FromTimes($"s{week}", "a", Start.AddDays(7 * week), Examples.Protocol, [.. Enumerable.Repeat(total / 5, 5)]))];

    [Fact]
    public void An_interrupted_series_shows_jump_and_bend_with_both_intervals()
    {
        // R 4.2.2: lm(y ~ t + P + I(P * (t - 8))): jump -3.040476, 90 % -4.055756 to -2.025196; effect at t = 15 -4.915476; DW 2.240.
        var table = Tables.InterruptedSeries(InterruptedSeries.Fit(Series, Start.AddDays(56), new InterruptedSeriesOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow(), new NumberFormat(1));
        Assert.Equal("Before and from 4 Mar 2031", table.Caption);
        Assert.Equal(["jump at that date", "−3.0 s", "−4.1 to −2.0 s"], table.Rows[1].Take(3).Select(cell => cell.Text));
        Assert.Equal("–", table.Rows[3][3].Text);
        Assert.Equal("−4.9 s", table.Rows[3][1].Text);
        Assert.Contains("Durbin-Watson 2.24", table.Notes[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_thin_segment_says_that_there_is_no_verdict()
    {
        var table = Tables.InterruptedSeries(InterruptedSeries.Fit(Series[2..14], Start.AddDays(56), new InterruptedSeriesOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow(), new NumberFormat(1));
        Assert.Contains("Only 6 tests in a segment (8 are needed): shown without a verdict.", table.Notes);
    }

    [Fact]
    public void A_drifting_level_shows_weeks_without_a_test_too()
    {
        double[] totals = [330.1, 328.4, 329.9, 327.2, 328.8, 326.1, 327.9, 325.0, 326.8, 326.2, 323.9, 325.6, 323.1, 324.7, 322.0, 323.4];
        Session[] tests = [.. Weekly(totals).Where((_, week) => week != 5)];
        var season = SeasonLevel.Fit(tests, new SeasonLevelOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var table = Tables.SeasonLevel("A1", season, new NumberFormat(1));
        Assert.Equal(16, table.Rows.Count);
        Assert.Equal(["10 Feb 2031", "–"], table.Rows[5].Take(2).Select(cell => cell.Text));
        Assert.NotEqual("–", table.Rows[5][2].Text);
        Assert.Contains("1 weeks without a test: the level is carried on, its interval widens.", table.Notes);
    }
}
