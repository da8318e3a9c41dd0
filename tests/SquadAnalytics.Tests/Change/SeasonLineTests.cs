using SquadAnalytics.Change;

namespace SquadAnalytics.Tests.Change;

public sealed class SeasonLineTests
{
    private static readonly SeasonLineOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void A_test_after_a_gap_counts_for_more()
    {
        // R 4.2.2: g <- diff(w); z <- y[1]; for (i in 2:10) { l <- 1 - .7^g[i - 1]; z[i] <- l * y[i] + (1 - l) * z[i - 1] }.
        double[] expected = [331.200, 330.960, 329.802, 329.261, 328.261, 326.863, 326.154, 324.494, 323.086, 322.520];
        var line = SeasonLine.Smooth(SeasonData.Season, All).GetOrThrow();
        Assert.Equal(10, line.Points.Count);
        for (var i = 0; i < expected.Length; i++) Assert.Equal(expected[i], line.Points[i].LineSeconds, 6e-4);
    }

    [Fact]
    public void Weeks_without_a_test_have_no_point()
    {
        var line = SeasonLine.Smooth(SeasonData.Season, All).GetOrThrow();
        Assert.DoesNotContain(line.Points, point => point.Week is 4 or 8);
        Assert.Equal([0, 1, 2, 3, 5, 6, 7, 9, 10, 11], line.Points.Select(point => point.Week));
    }

    [Fact]
    public void Tests_of_one_date_are_averaged()
    {
        // Hand arithmetic: dates 330 and (320 + 324) / 2 = 322, one week apart: 330 + 0.3 (322 - 330) = 327.6.
        var line = SeasonLine.Smooth([WorkedData.Total(330), WorkedData.Total(320, 1), WorkedData.Total(324, 1) with { Id = "second", Occasion = 2 }], All).GetOrThrow();
        Assert.Equal(327.6, line.Points[^1].LineSeconds, 1e-9);
    }

    [Fact]
    public void Without_a_session_there_is_no_line()
    {
        Assert.Equal(Refusal.TooFewSessions, SeasonLine.Smooth([], All).Refusal!.Reason);
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeasonLineOptions { Lambda = 0 });
    }
}
