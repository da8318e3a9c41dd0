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
    public void A_season_without_visible_differences_passes_its_refusal_on()
    {
        var season = SquadTrend.Fit(WorkedData.EightAthletes, new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(season.SlopeSpread.Refusal, ResponseSpread.OfSeason(season).Refusal);
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
