using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Change;

public sealed class MoreTestsTests
{
    private static readonly TypicalErrorResult Error = TypicalErrorResult(2.6);

    [Fact]
    public void The_chance_of_seeing_a_break_is_that_of_the_noncentral_t()
    {
        // R 4.2.2, wl and wk the weights of both contrasts, d <- log(1.05), m <- 8, s <- 0.02: p <- 1 - pt(qt(0.95, m - 1), m - 1, d * sum(w * (k > 3)) * sqrt(m) / (s * sqrt(sum(w^2)))); p1 + p2 - 1.
        var result = MoreTests.ForBreak(Noise(0.02), new Percent(5), 3, 5).GetOrThrow();
        Assert.Equal(0.975509736489, At(result, 3), 1e-9);
        Assert.Equal(result.Curve.First(point => point.Power.Value >= 0.8).Further, result.Needed.GetOrThrow().Value);
        // A t needs 4 sessions: with 2 so far the curve starts at 2 further ones.
        Assert.Equal(2, MoreTests.ForBreak(Noise(0.02), new Percent(5), 3, 2).GetOrThrow().Curve[0].Further);
    }

    [Fact]
    public void The_chance_of_seeing_a_change_is_that_of_the_noncentral_t()
    {
        // R 4.2.2: 1 - pt(qt(0.95, 20), 20, 4 / (2.6 * sqrt(1/3 + 1/4))).
        var result = MoreTests.ForChange(Error, SmallestWorthwhileChange.Entered(new Seconds(4)), 3);
        Assert.Equal(0.618153594693, At(result, 4), 1e-9);
        Assert.All(result.Curve.Zip(result.Curve.Skip(1)), pair => Assert.True(pair.Second.Power.Value > pair.First.Power.Value));
        Assert.InRange(At(result, 4), result.Curve[3].Power.Lower!.Value, result.Curve[3].Power.Upper!.Value);
        // The three earlier tests keep their noise: 1 s never reaches 80 %.
        Assert.Equal(Refusal.TooFewSessions, MoreTests.ForChange(Error, SmallestWorthwhileChange.Entered(new Seconds(1)), 3).Needed.Refusal!.Reason);
    }

    [Fact]
    public void With_as_many_tests_before_as_after_a_small_change_can_be_seen()
    {
        // R 4.2.2: p <- function(m) 1 - pt(qt(.95, 20), 20, 4 / (2.6 * sqrt(2 / m))); p(3); p(5); p(6).
        var result = MoreTests.ForChangeOfEqualSides(Error, SmallestWorthwhileChange.Entered(new Seconds(4)));
        Assert.Equal(0.569497756345, At(result, 3), 1e-9);
        Assert.Equal(6, result.Needed.GetOrThrow().Value);
    }

    [Fact]
    public void With_enough_tests_so_far_the_chance_without_a_further_one_is_told()
    {
        // R 4.2.2: the lines of the first test with d <- log(1.05), m <- 8.
        var result = MoreTests.ForBreak(Noise(0.02), new Percent(5), 3, 8).GetOrThrow();
        Assert.Equal(0, result.Curve[0].Further);
        Assert.Equal(0.975509736489, At(result, 0), 1e-9);
        Assert.Equal(0, result.Needed.GetOrThrow().Value);
        Assert.Equal(30, result.Curve[^1].Further);
    }

    [Fact]
    public void The_chance_of_seeing_a_block_difference_is_that_of_a_paired_t()
    {
        // R 4.2.2: power.t.test(n = 12, delta = 1, sd = 1.4, sig.level = 0.05, type = "paired", alternative = "one.sided").
        var result = MoreTests.ForBlocks(TypicalErrorResult(1.4 / Math.Sqrt(2)), SmallestWorthwhileChange.Entered(new Seconds(1)), 12).GetOrThrow();
        Assert.Equal(0.749584452121, At(result, 1), 1e-8);
        Assert.Equal(Refusal.TooFewAthletes, MoreTests.ForBlocks(Error, SmallestWorthwhileChange.Entered(new Seconds(1)), 1).Refusal!.Reason);
    }

    [Fact]
    public void The_smallest_difference_has_just_the_chance_that_is_wanted()
    {
        var change = MoreTests.SmallestChange(Error, 3, 4);
        Assert.Equal(0.8, At(MoreTests.ForChange(Error, SmallestWorthwhileChange.Entered(new Seconds(change.Value)), 3), 4), 1e-8);
        var block = MoreTests.SmallestBlockDifference(Error, 12, 3, 0.5).GetOrThrow();
        Assert.Equal(0.8, At(MoreTests.ForBlocks(Error, SmallestWorthwhileChange.Entered(new Seconds(block.Value)), 12, 0.5).GetOrThrow(), 3), 1e-8);
        var late = MoreTests.SmallestBreak(Noise(0.01), 3, 12).GetOrThrow();
        Assert.Equal(0.8, At(MoreTests.ForBreak(Noise(0.01), new Percent(late.Value), 3).GetOrThrow(), 12), 1e-8);
        Assert.True(late.Lower < late.Value && late.Value < late.Upper);
    }

    [Fact]
    public void Too_little_is_refused_and_mistakes_are_thrown()
    {
        Assert.Equal(Refusal.TooFewSessions, MoreTests.SmallestBreak(Noise(0.01), 3, 3).Refusal!.Reason);
        Assert.Throws<ArgumentOutOfRangeException>(() => MoreTests.ForBreak(Noise(0.01), new Percent(5), 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoreTests.ForBreak(Noise(0.01), new Percent(-5), 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoreTests.SmallestChange(Error, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MoreTests.SmallestChange(Error, 1, 1, new MoreTestsOptions { Wanted = 0.04 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => new MoreTestsOptions { Wanted = 1 });
    }

    private static double At(MoreTestsResult result, int further) => result.Curve.Single(point => point.Further == further).Power.Value;

    private static TypicalErrorResult TypicalErrorResult(double seconds) => TypicalError.Entered(new Seconds(seconds), 20, "entered for the test");

    private static SetNoiseResult Noise(double sigma) => new()
    {
        Noise = new Estimate(Percent.FromLog(sigma).Value, Unit.Percent, 72, "entered for the test"),
        LogNoise = new Estimate(sigma, Unit.LogSeconds, 72, "entered for the test") { DegreesOfFreedom = 55, Interval = new Interval(0.87 * sigma, 1.18 * sigma, ConfidenceLevel.Ninety) },
        Sets = 6,
        Selection = SessionSelection.Of([], SelectionOptions.KeepAll).GetOrThrow(),
    };

    [Fact]
    public void A_chance_that_has_reached_one_keeps_an_interval_in_order()
    {
        // By hand: with a change of a hundred typical errors every chance is 1 to the last bits.
        var result = MoreTests.ForChange(TypicalError.Entered(new Seconds(1), 60, "entered"), SmallestWorthwhileChange.Entered(new Seconds(100)), 3);
        Assert.All(result.Curve, point => Assert.True(point.Power.Lower <= point.Power.Upper));
        Assert.Equal(1, result.Needed.GetOrThrow().Value);
    }
}
