using CsCheck;
using SquadAnalytics.Change;

namespace SquadAnalytics.Tests.Change;

public sealed class ResponseSpreadTests
{
    [Theory]
    [InlineData(3.86, 2.90, 2.547469)]
    [InlineData(2.50, 2.90, -1.469694)]
    public void The_spread_is_what_the_comparison_group_leaves(double trained, double comparison, double expected)
    {
        // R 4.2.2: sqrt(3.86^2 - 2.9^2); -sqrt(abs(2.5^2 - 2.9^2)).
        var spread = ResponseSpread.Fit([.. Group("trained", trained), .. Group("comparison", comparison)], "comparison").GetOrThrow();
        Assert.Equal(expected, spread.StandardDeviation.Value, 5e-7);
        Assert.Equal(expected < 0, spread.IsNegative);
        Assert.Equal(expected < 0, spread.Notes.Any(note => note.StartsWith("Negative variance component", StringComparison.Ordinal)));
        Assert.False(spread.IsClear);
    }

    [Fact]
    public void The_limits_are_signed_roots_of_the_limits_of_the_variance()
    {
        // R 4.2.2: v <- 3.86^2 - 2.9^2; se <- sqrt(2 * (3.86^4 / 7 + 2.9^4 / 7)); l <- v + c(-1, 1) * qnorm(.95) * se; sign(l) * sqrt(abs(l)) = -2.92455782, 4.64028431.
        var spread = ResponseSpread.Fit([.. Group("trained", 3.86), .. Group("comparison", 2.9)], "comparison").GetOrThrow();
        Assert.Equal(-2.92455782, spread.StandardDeviation.Lower!.Value, 5e-7);
        Assert.Equal(4.64028431, spread.StandardDeviation.Upper!.Value, 5e-7);
    }

    [Fact]
    public void Small_groups_are_refused() =>
        Assert.Equal(
            "Not enough data for the SD of individual responses: needs 6 athletes in each group, has 5 athletes in each group.",
            ResponseSpread.Fit([.. Group("trained", 3), .. Group("comparison", 3).Take(5)], "comparison").ToString());

    [Fact]
    public void Groups_that_do_not_fit_are_a_caller_mistake()
    {
        Assert.Throws<ArgumentException>(() => ResponseSpread.Fit([.. Group("trained", 3)], "comparison"));
        Assert.Throws<ArgumentException>(() => ResponseSpread.Fit([.. Group("trained", 3), .. Group("comparison", 3)], "third"));
        Assert.Throws<ArgumentException>(() => ResponseSpread.Fit([.. Group("trained", 3), .. Group("trained", 2), .. Group("comparison", 3)], "comparison"));
    }

    [Fact]
    public void A_season_without_visible_differences_says_how_large_they_may_be()
    {
        // R 4.2.2: b, deviances of lm(y ~ w) over athletes; v <- sum(deviance) / 16 / 5; Q <- function(o) sum((b - mean(b))^2) / (o^2 + v); Q(0) = 4.112505 lies between 7 * qf(c(.05, .95), 7, 16) = 2.003200 and 18.600380,
        // so that the lower limit is 0; 3 * uniroot(function(o) Q(o) - 7 * qf(.05, 7, 16), c(0, 50))$root = 3.725102.
        var season = SquadTrend.Fit(WorkedData.EightAthletes, new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(Refusal.BoundarySolution, season.SlopeSpread.Refusal!.Reason);
        var spread = ResponseSpread.OfSeason(season).GetOrThrow();
        Assert.Equal((0, 0), (spread.StandardDeviation.Value, spread.StandardDeviation.Lower!.Value));
        Assert.Equal(3.725102, spread.StandardDeviation.Upper!.Value, 5e-7);
        Assert.False(spread.IsClear);
        Assert.Contains(spread.Notes, note => note.Contains("does not show that athletes respond alike", StringComparison.Ordinal));
    }

    [Fact]
    public void Slopes_that_differ_by_less_than_noise_makes_them_say_where_limits_of_zero_come_from()
    {
        // By hand: every athlete has the same slope to the rounding of the totals, while tests scatter by seconds about the lines: Q is near 0.
        double[] scatter = [3, -4, 1, 1, -4, 3];
        var sessions = WorkedData.Weekly([.. Enumerable.Range(0, 8).Select(athlete => scatter.Select((step, week) => 300 + (10 * athlete) - week + step).ToArray())]);
        var spread = ResponseSpread.OfSeason(SquadTrend.Fit(sessions, new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow()).GetOrThrow();
        Assert.Equal(0, spread.StandardDeviation.Upper!.Value);
        Assert.Contains(spread.Notes, note => note.Contains("limits of 0 come from that chance", StringComparison.Ordinal));
    }

    [Fact]
    public void A_season_with_few_lines_is_refused()
    {
        var season = SquadTrend.Fit([.. WorkedData.EightAthletes.Where(session => session.Date < new DateOnly(2031, 1, 20))], new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal("Not enough data for how athletes' slopes differ: needs 6 athletes with 3 tests, has 0 athletes with 3 tests.", ResponseSpread.OfSeason(season).ToString());
    }

    [Fact]
    public void A_common_shift_of_all_changes_leaves_the_spread_alone() =>
        Gen.Select(Gen.Double[-20, 20], Gen.Double[0.5, 3]).Sample((shift, factor) =>
        {
            BeforeAndAfter[] rows = [.. Group("trained", 3.86), .. Group("comparison", 2.9)];
            var plain = ResponseSpread.Fit(rows, "comparison").GetOrThrow().StandardDeviation;
            var moved = ResponseSpread.Fit([.. rows.Select(row => new BeforeAndAfter(row.AthleteId, row.Group, row.Before, new Seconds(row.After.Value + shift)))], "comparison").GetOrThrow().StandardDeviation;
            var scaled = ResponseSpread.Fit([.. rows.Select(row => new BeforeAndAfter(row.AthleteId, row.Group, new Seconds(factor * row.Before.Value), new Seconds(factor * row.After.Value)))], "comparison").GetOrThrow().StandardDeviation;
            ReferenceData.AssertClose(plain.Value, moved.Value, 1e-8);
            ReferenceData.AssertClose(factor * plain.Value, scaled.Value, 1e-8);
        }, iter: 50);

    /// <summary>Eight athletes whose changes have exactly this standard deviation.</summary>
    private static BeforeAndAfter[] Group(string name, double deviation)
    {
        // Hand arithmetic: -3, -2, -2, -1, 1, 2, 2, 3 have mean 0 and a sum of squares of 36.
        double[] pattern = [-3, -2, -2, -1, 1, 2, 2, 3];
        return [.. pattern.Select((step, i) => new BeforeAndAfter($"{name}-{i}", name, new Seconds(300 + i), new Seconds(300 + i - 4 + deviation * step / Math.Sqrt(36.0 / 7))))];
    }
}
