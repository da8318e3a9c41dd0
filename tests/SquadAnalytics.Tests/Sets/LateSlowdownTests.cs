using CsCheck;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Sets;

public sealed class LateSlowdownTests
{
    private static readonly LateSlowdownOptions AfterThree = new() { AfterSet = 3, Selection = SelectionOptions.KeepAll };
    private static readonly LateSlowdownOptions Searched = new() { Scale = Scale.Log, Selection = SelectionOptions.KeepAll };

    [Fact]
    public void A_late_break_is_found_when_named_in_advance()
    {
        // R 4.2.2: t.test(c_s, conf.level = .9), t.test(kappa_s, conf.level = .9), b = 3, seconds.
        var result = LateSlowdown.Fit(WorkedData.SixSessions, AfterThree).GetOrThrow();
        Assert.Equal([6.5833, 6.0167, 5.6667, 6.3667, 5.3500, 5.8667], result.Sessions.Select(session => Math.Round(session.LateContrast.Value, 4)));
        Assert.Equal(5.975, result.LateContrast.Value, 1e-9);
        Assert.Equal(5.602963, result.LateContrast.Lower!.Value, 5e-7);
        Assert.Equal(6.347037, result.LateContrast.Upper!.Value, 5e-7);
        Assert.Equal(5, result.LateContrast.DegreesOfFreedom);
        Assert.Equal(32.362, result.LateContrast.Value / result.LateContrast.StandardError!.Value, 5e-4);
        Assert.Equal([1.1083, 0.8667, 0.5417, 0.8167, 0.7000, 0.8667], result.Sessions.Select(session => Math.Round(session.KinkContrast.Value, 4)));
        Assert.Equal(0.816667, result.KinkContrast.Value, 5e-7);
        Assert.Equal(0.660883, result.KinkContrast.Lower!.Value, 5e-7);
        Assert.Equal(0.972450, result.KinkContrast.Upper!.Value, 5e-7);
        Assert.Equal(10.564, result.KinkContrast.Value / result.KinkContrast.StandardError!.Value, 5e-4);
        Assert.Equal(0.000131, result.KinkContrast.PValue!.Value, 5e-7);
        Assert.True(result.SlowsAfterSet);
    }

    [Fact]
    public void On_logarithms_the_contrasts_match_R_in_percent()
    {
        // R 4.2.2: the same on log(t); 100 * expm1() of the mean and the limits.
        var result = LateSlowdown.Fit(WorkedData.SixSessions, AfterThree with { Scale = Scale.Log }).GetOrThrow();
        Assert.Equal(9.5398, result.LateContrast.Value, 5e-5);
        Assert.Equal(8.9465, result.LateContrast.Lower!.Value, 5e-5);
        Assert.Equal(10.1364, result.LateContrast.Upper!.Value, 5e-5);
        Assert.Equal(0.09111775, Math.Log(1 + result.LateContrast.Value / 100), 5e-9);
        Assert.Equal(0.01227401, Math.Log(1 + result.KinkContrast.Value / 100), 5e-9);
        Assert.Equal(0.01001612, Math.Log(1 + result.KinkContrast.Lower!.Value / 100), 5e-9);
        Assert.Equal(0.0145319, Math.Log(1 + result.KinkContrast.Upper!.Value / 100), 5e-8);
    }

    [Fact]
    public void A_break_found_by_searching_pays_for_the_search()
    {
        // R 4.2.2: the largest of the four t.test statistics of log(t) contrasts is 33.805 at b = 3; all 64 flips of whole profiles give p = 1/64.
        // b = 3 is also where the contrast beyond a straight line is largest, which is what the search looks at.
        var result = LateSlowdown.Fit(WorkedData.SixSessions, Searched).GetOrThrow();
        Assert.Equal(3, result.AfterSet);
        Assert.Equal(BreakChoice.FoundBySearch, result.Choice);
        Assert.Equal(1.0 / 64, result.LatePValue.Value, 1e-15);
        var weights = Contrasts.Late(5, 3);
        double[] late = [.. WorkedData.SixSessions.Select(session => Contrasts.Apply(weights, [.. session.TimesSeconds.Select(time => Math.Log(time))]))];
        Assert.Equal(33.805, Descriptive.Mean(late) / (Descriptive.StandardDeviation(late) / Math.Sqrt(late.Length)), 5e-4);
        Assert.Contains(result.LateContrast.Notes, note => note.Contains("found by looking", StringComparison.Ordinal));
    }

    [Fact]
    public void The_kink_weights_leave_a_straight_line_at_zero()
    {
        // Hand arithmetic for n = 5, b = 3: (1/6, -1/12, -1/3, 1/4, 0), sum of squares 0.2083333.
        var weights = Contrasts.Kink(5, 3);
        double[] expected = [1.0 / 6, -1.0 / 12, -1.0 / 3, 0.25, 0];
        for (var k = 0; k < 5; k++) Assert.Equal(expected[k], weights[k], 1e-15);
        Assert.Equal(0.2083333, weights.Sum(weight => weight * weight), 5e-8);
        Assert.Equal(0, Contrasts.Apply(Contrasts.Kink(9, 4), [1, 3, 5, 7, 9, 11, 13, 15, 17]), 1e-12);
    }

    [Fact]
    public void A_single_session_borrows_the_noise_of_the_others()
    {
        // R 4.2.2: s <- 0.01150327; c(0.0991633) + c(-1, 1) * qt(.95, 16) * s * sqrt(1/3 + 1/2), back-transformed.
        var noise = SetNoise.Fit(WorkedData.SixSessions).GetOrThrow();
        var contrast = LateSlowdown.Summarize(WorkedData.FirstSession, noise, 3).GetOrThrow();
        Assert.Equal(0.0991633, Math.Log(1 + contrast.LateContrast.Value / 100), 5e-8);
        Assert.Equal(8.419, contrast.LateContrast.Lower!.Value, 5e-4);
        Assert.Equal(12.468, contrast.LateContrast.Upper!.Value, 5e-4);
        Assert.Equal(0.0105010, contrast.LateContrast.StandardError!.Value / (100 + contrast.LateContrast.Value), 5e-8);
        Assert.Equal(0.0164900, Math.Log(1 + contrast.KinkContrast.Value / 100), 5e-8);
        Assert.Equal(0.0052505, contrast.KinkContrast.StandardError!.Value / (100 + contrast.KinkContrast.Value), 5e-8);
    }

    [Fact]
    public void Too_few_sessions_are_refused_sooner_when_named_than_when_searched()
    {
        IReadOnlyList<Session> four = [.. WorkedData.SixSessions.Take(4)];
        Assert.True(LateSlowdown.Fit(four, AfterThree).IsEstimated);
        Assert.Equal("Not enough data for the late slow-down: needs 5 eligible sessions, has 4 eligible sessions.", LateSlowdown.Fit(four, Searched).ToString());
        Assert.Equal(Refusal.TooFewSessions, LateSlowdown.Fit([.. four.Take(3)], AfterThree).Refusal!.Reason);
    }

    [Fact]
    public void Sessions_that_do_not_vary_are_refused()
    {
        double[] same = [60, 60, 60, 66, 66];
        Assert.Equal(Refusal.ZeroVariance, LateSlowdown.Fit(WorkedData.Sessions(same, same, same, same, same), AfterThree).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, LateSlowdown.Fit(WorkedData.Sessions(same, same, same, same, same), Searched).Refusal!.Reason);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    public void A_set_that_is_not_before_the_last_is_a_mistake_of_the_caller(int after) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LateSlowdown.Fit(WorkedData.SixSessions, AfterThree with { AfterSet = after }));

    [Fact]
    public void A_steady_drift_is_slower_late_but_not_after_a_set()
    {
        var drift = WorkedData.Sessions([60, 61.1, 62, 63, 64.1], [60, 61, 62.1, 63, 64], [60.2, 61, 62, 63.1, 64], [60, 61, 62, 63, 64.2], [60.1, 61.2, 62, 63, 64], [60, 61, 62.2, 63, 64]);
        var result = LateSlowdown.Fit(drift, AfterThree).GetOrThrow();
        Assert.True(result.IsSlowerLate);
        Assert.False(result.SlowsAfterSet);
    }

    [Fact]
    public void More_than_twelve_sessions_use_seeded_random_flips()
    {
        IReadOnlyList<Session> many = WorkedData.Sessions([.. Enumerable.Range(0, 15).Select(week => WorkedData.SixSessions[week % 6].TimesSeconds.Select((time, k) => time + 0.01 * week * k).ToArray())]);
        var first = LateSlowdown.Fit(many, Searched).GetOrThrow();
        // Hand arithmetic: all of 2^15 flips would give 1/32768; of 9 999 random ones few repeat the observed signs.
        Assert.InRange(first.LatePValue.Value, 0.0001, 0.0006);
        Assert.Equal(first.KinkPValue.Value, LateSlowdown.Fit(many, Searched).GetOrThrow().KinkPValue.Value);
    }

    [Fact]
    public void Adding_a_constant_or_reordering_sessions_changes_no_contrast() =>
        Gen.Select(Gen.Double[50, 90].Array[5].Array[4, 8], Gen.Double[0.5, 20], Gen.Int[1, 4]).Sample((times, shift, after) =>
        {
            var options = AfterThree with { AfterSet = after };
            var before = LateSlowdown.Fit(WorkedData.Sessions(times), options).GetOrThrow();
            IReadOnlyList<Session> moved = [.. WorkedData.Sessions([.. times.Select(row => row.Select(time => time + shift).ToArray())]).Reverse()];
            var result = LateSlowdown.Fit(moved, options).GetOrThrow();
            Assert.Equal(before.LateContrast.Value, result.LateContrast.Value, 1e-9);
            Assert.Equal(before.KinkContrast.Value, result.KinkContrast.Value, 1e-9);
            Assert.Equal(before.KinkContrast.StandardError!.Value, result.KinkContrast.StandardError!.Value, 1e-9);
        });
}
