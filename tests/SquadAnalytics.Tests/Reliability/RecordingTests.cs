using SquadAnalytics.Reliability;

namespace SquadAnalytics.Tests.Reliability;

public sealed class RecordingTests
{
    [Fact]
    public void Rounding_and_hand_timing_add_the_noise_of_hand_arithmetic()
    {
        // Hand arithmetic for 5 sets: √(5/12) = 0.645497, √5 · 0.2 = 0.447214, together 0.785281, on a difference 1.110555.
        var error = TimingError.Of(5, new Seconds(1));
        Assert.Equal(0.645497, error.Rounding.Value, 5e-7);
        Assert.Equal(0.447214, error.Hand.Value, 5e-7);
        Assert.Equal(0.785281, error.OfTotal.Value, 5e-7);
        Assert.Equal(1.110555, error.OfDifference.Value, 5e-7);
        Assert.Equal(0, TimingError.Of(5, new Seconds(0.1), new Seconds(0)).Hand.Value);
        Assert.Throws<ArgumentOutOfRangeException>(() => TimingError.Of(5, new Seconds(0)));
    }

    [Fact]
    public void Heaped_last_digits_are_found_as_in_R()
    {
        // R 4.2.2: x <- c(18, 6, 4, 5, 4, 15, 3, 2, 2, 1); chisq.test(x); binom.test(33, 60, 0.2)$p.value = 2.27e-9.
        int[] counts = [18, 6, 4, 5, 4, 15, 3, 2, 2, 1];
        double[] times = [.. counts.SelectMany((count, digit) => Enumerable.Repeat(60 + digit / 10.0, count))];
        var heaping = DigitHeaping.Fit(times, new Seconds(0.1)).GetOrThrow();
        Assert.Equal(counts, heaping.Counts);
        Assert.Equal(50, heaping.ChiSquared.Value, 1e-9);
        Assert.Equal(0.55, heaping.RoundShare.Value, 1e-12);
        Assert.Equal(2.27e-9, heaping.RoundShare.PValue!.Value, 5e-12);
        Assert.True(heaping.ChiSquared.PValue < 1e-6);
    }

    [Fact]
    public void Even_digits_are_not_called_heaped()
    {
        var heaping = DigitHeaping.Fit([.. Enumerable.Range(0, 60).Select(i => 60 + i / 10.0)], new Seconds(0.1)).GetOrThrow();
        Assert.Equal(0, heaping.ChiSquared.Value, 1e-12);
        Assert.Equal(1, heaping.RoundShare.PValue!.Value, 1e-6);
        Assert.Equal(Refusal.TooFewObservations, DigitHeaping.Fit([60, 61], new Seconds(1)).Refusal!.Reason);
    }

    [Fact]
    public void The_tipping_point_of_missed_tests_is_the_difference_over_their_share()
    {
        // Hand arithmetic: 5.7025 / 0.25 = 22.81; nearer limit 3.6275 / 0.25 = 14.51.
        var difference = new Estimate(-5.7025, Unit.Seconds, 7, "paired t") { Interval = new Interval(-7.7775, -3.6275, ConfidenceLevel.Ninety) };
        var tipping = MissingTests.Tipping(difference, new Percent(25));
        Assert.Equal(22.81, tipping.ErasesDifference.Value, 1e-9);
        Assert.Equal(14.51, tipping.ReachesLimit.Value, 1e-9);
        var unclear = difference with { Interval = new Interval(-12, 1, ConfidenceLevel.Ninety) };
        Assert.Equal(0, MissingTests.Tipping(unclear, new Percent(25)).ReachesLimit.Value);
        Assert.Throws<ArgumentOutOfRangeException>(() => MissingTests.Tipping(difference, new Percent(0)));
    }
}
