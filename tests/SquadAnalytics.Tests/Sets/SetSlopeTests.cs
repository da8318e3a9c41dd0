using CsCheck;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class SetSlopeTests
{
    [Fact]
    public void The_slopes_of_a_session_match_R()
    {
        // R 4.2.2: t <- c(62.4, 63.1, 64.0, 69.2, 70.3); k <- 1:5; m <- lm(t ~ k); confint(m, level = .9); l <- lm(log(t) ~ k); 100 * expm1(confint(l, level = .9))
        var slope = SetSlope.Fit(WorkedData.FirstSession).GetOrThrow();
        Assert.Equal(2.19, slope.Linear.Value, 1e-9);
        Assert.Equal(0.444934, slope.Linear.StandardError!.Value, 5e-7);
        Assert.Equal(1.14291, slope.Linear.Lower!.Value, 5e-6);
        Assert.Equal(3.23709, slope.Linear.Upper!.Value, 5e-6);
        Assert.Equal(3, slope.Linear.DegreesOfFreedom);
        Assert.Equal(3.362218, slope.Relative.Value, 5e-7);
        Assert.Equal(1.766884, slope.Relative.Lower!.Value, 5e-7);
        Assert.Equal(4.982561, slope.Relative.Upper!.Value, 5e-7);
    }

    [Fact]
    public void The_robust_line_is_the_median_of_the_ten_pairwise_slopes()
    {
        // Hand arithmetic: slopes .7 .8 .9 1.1 1.975 2.266667 2.4 3.05 3.15 5.2; median 2.120833; median of t - 2.120833 k: 59.695833.
        var slope = SetSlope.Fit(WorkedData.FirstSession).GetOrThrow();
        Assert.Equal(2.120833, slope.Robust.Value, 5e-7);
        Assert.Equal(59.695833, slope.RobustIntercept.Value, 5e-7);
        Assert.Equal(Refusal.TooFewSets, slope.RobustInterval.Refusal!.Reason);
    }

    [Fact]
    public void Three_sets_give_a_slope_without_an_interval()
    {
        var slope = SetSlope.Fit(WorkedData.One([60, 62, 65])).GetOrThrow();
        Assert.Equal(2.5, slope.Linear.Value, 1e-12);
        Assert.Null(slope.Linear.Interval);
        Assert.Contains("No interval: needs 4 sets.", slope.Linear.Notes);
    }

    [Fact]
    public void Eight_sets_give_the_robust_slope_an_interval()
    {
        // R 4.2.2: s <- sort(outer slopes); C <- qnorm(.95) * sqrt(8 * 7 * 21 / 18); s[round((28 - C) / 2)]; s[round((28 + C) / 2) + 1]: ranks 7 and 22 of 28.
        var slope = SetSlope.Fit(WorkedData.One([60, 61, 61.5, 63, 63.2, 65, 65.4, 68])).GetOrThrow();
        var interval = slope.RobustInterval.GetOrThrow();
        double[] times = [60, 61, 61.5, 63, 63.2, 65, 65.4, 68];
        double[] slopes = [.. Enumerable.Range(0, 8).SelectMany(k => Enumerable.Range(k + 1, 7 - k).Select(l => (times[l] - times[k]) / (l - k))).Order()];
        Assert.Equal(slopes[6], interval.Lower, 1e-12);
        Assert.Equal(slopes[21], interval.Upper, 1e-12);
    }

    [Fact]
    public void Sets_that_are_all_alike_lie_on_a_flat_line()
    {
        // Hand arithmetic.
        var slope = SetSlope.Fit(WorkedData.One([60, 60, 60, 60, 60])).GetOrThrow();
        Assert.Equal(0, slope.Linear.Value, 1e-12);
        Assert.Equal(0, slope.Robust.Value, 1e-12);
        Assert.Equal(60, slope.RobustIntercept.Value, 1e-12);
    }

    [Fact]
    public void Two_sets_refuse_a_slope() =>
        Assert.Equal("Not enough data for the slope per set: needs 3 timed sets, has 2 timed sets.", SetSlope.Fit(WorkedData.One([60, 62])).ToString());

    [Fact]
    public void A_set_without_a_time_keeps_its_number()
    {
        // Hand arithmetic: sets 1, 2, 4 at 60, 61, 63 lie on a line of slope 1.
        var session = new Session("s", "a1", new DateOnly(2031, 1, 7), WorkedData.WithSets(4),
            [new SetTime(1, new Seconds(60)), new SetTime(2, new Seconds(61)), new SetTime(3, SetStatus.CompletedUntimed), new SetTime(4, new Seconds(63))]);
        var slope = SetSlope.Fit(session).GetOrThrow();
        Assert.Equal(1, slope.Linear.Value, 1e-12);
        Assert.Equal(1, slope.Robust.Value, 1e-12);
        Assert.Contains("3 of 4 sets.", slope.Linear.Notes);
    }

    [Fact]
    public void Shifting_leaves_slopes_and_scaling_leaves_percent_unchanged() =>
        Gen.Select(Gen.Double[40, 120].Array[4, 12], Gen.Double[0.5, 20], Gen.Double[0.2, 5]).Sample((times, shift, factor) =>
        {
            var before = SetSlope.Fit(WorkedData.One(times)).GetOrThrow();
            var shifted = SetSlope.Fit(WorkedData.One([.. times.Select(time => time + shift)])).GetOrThrow();
            var scaled = SetSlope.Fit(WorkedData.One([.. times.Select(time => time * factor)])).GetOrThrow();
            Assert.Equal(before.Linear.Value, shifted.Linear.Value, 1e-9);
            Assert.Equal(before.Linear.StandardError!.Value, shifted.Linear.StandardError!.Value, 1e-9);
            Assert.Equal(before.Robust.Value, shifted.Robust.Value, 1e-9);
            Assert.Equal(before.Linear.Value * factor, scaled.Linear.Value, 1e-8);
            Assert.Equal(before.Relative.Value, scaled.Relative.Value, 1e-8);
        });
}
