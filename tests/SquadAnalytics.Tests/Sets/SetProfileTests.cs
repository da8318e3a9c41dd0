using CsCheck;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Sets;

public sealed class SetProfileTests
{
    [Fact]
    public void The_level_of_a_session_matches_R()
    {
        // R 4.2.2: x <- c(62.4, 63.1, 64.0, 69.2, 70.3); sum(x); mean(x); range(x); sd(x); 100 * sd(x) / mean(x)
        var profile = SetProfile.Summarize(WorkedData.FirstSession).GetOrThrow();
        Assert.Equal(329.0, profile.Total.GetOrThrow().Value, 1e-9);
        Assert.Equal(65.80, profile.Mean.Value, 1e-9);
        Assert.Equal(62.4, profile.Best.Value);
        Assert.Equal(70.3, profile.Worst.Value);
        Assert.Equal(7.9, profile.Range.Value, 1e-9);
        Assert.Equal(3.67083, profile.StandardDeviation.GetOrThrow().Value, 5e-6);
        Assert.Equal(5.57877, profile.CoefficientOfVariation.GetOrThrow().Value, 5e-6);
    }

    [Fact]
    public void An_incomplete_session_shows_its_sets_but_refuses_the_total()
    {
        var session = new Session("s", "a1", new DateOnly(2031, 1, 7), WorkedData.Circuit, [new SetTime(1, new Seconds(62)), new SetTime(2, new Seconds(64)), new SetTime(3, SetStatus.NotFinished)]);
        var profile = SetProfile.Summarize(session).GetOrThrow();
        Assert.Equal(Refusal.IncompleteSession, profile.Total.Refusal!.Reason);
        Assert.Equal(63, profile.Mean.Value, 1e-12);
        Assert.Contains("2 of 5 sets.", profile.Mean.Notes);
    }

    [Fact]
    public void A_spread_needs_two_sets_and_a_profile_one()
    {
        var one = new Session("s", "a1", new DateOnly(2031, 1, 7), WorkedData.Circuit, [new SetTime(1, new Seconds(62))]);
        Assert.Equal(Refusal.TooFewSets, SetProfile.Summarize(one).GetOrThrow().StandardDeviation.Refusal!.Reason);
        var none = new Session("s", "a1", new DateOnly(2031, 1, 7), WorkedData.Circuit, [new SetTime(1, SetStatus.NotStarted)]);
        Assert.Equal("Not enough data for the set profile: needs 1 timed sets, has 0 timed sets.", SetProfile.Summarize(none).ToString());
    }

    [Fact]
    public void A_small_spread_survives_a_large_mean()
    {
        // Hand arithmetic: 10000000.2 + {0, 0.1, 0.2} has SD 0.1; the times themselves carry a rounding of 2e-9.
        var profile = SetProfile.Summarize(WorkedData.One([1e7 + 0.2, 1e7 + 0.3, 1e7 + 0.4])).GetOrThrow();
        Assert.Equal(0.1, profile.StandardDeviation.GetOrThrow().Value, 1e-8);
    }

    [Fact]
    public void Every_measure_of_the_generated_sessions_matches_R()
    {
        var tolerance = 1e-10;
        var data = ReferenceData.Text("monitoring", "generated_sets.csv");
        var seconds = ReferenceData.Column("monitoring", "generated_sets.csv", "seconds");
        foreach (var expected in ReferenceData.Values("monitoring", "generated_sets", "measures").EnumerateArray())
        {
            var athlete = expected.GetProperty("athlete").GetString()!;
            var number = expected.GetProperty("session").GetInt32();
            double[] times = [.. Enumerable.Range(0, seconds.Length).Where(i => data["athlete"][i] == athlete && data["session"][i] == $"{number}").Select(i => seconds[i])];
            var session = WorkedData.One(times, number, athlete);
            var profile = SetProfile.Summarize(session).GetOrThrow();
            var indices = FatigueIndices.Summarize(session).GetOrThrow();
            var slope = SetSlope.Fit(session, new SetSlopeOptions { Level = ConfidenceLevel.NinetyFive }).GetOrThrow();
            void Same(string name, double got) => ReferenceData.AssertClose(expected.GetProperty(name).GetDouble(), got, tolerance, 1e-12, $"{athlete} {number} {name}");
            Same("n", profile.Mean.Observations);
            Same("mean", profile.Mean.Value);
            Same("sd", profile.StandardDeviation.GetOrThrow().Value);
            Same("cv_percent", profile.CoefficientOfVariation.GetOrThrow().Value);
            Same("best", profile.Best.Value);
            Same("worst", profile.Worst.Value);
            Same("total", profile.Total.GetOrThrow().Value);
            Same("last_first_ratio", indices.LastToFirstRatio.Value);
            Same("last_first_percent", indices.FirstToLast.Value);
            Same("worst_best_percent", indices.Extremes.Value);
            Same("percent_decrement", indices.Decrement.Value);
            Same("slope", slope.Linear.Value);
            Same("slope_se", slope.Linear.StandardError!.Value);
            Same("slope_p", slope.Linear.PValue!.Value);
            Same("slope_lower95", slope.Linear.Lower!.Value);
            Same("slope_upper95", slope.Linear.Upper!.Value);
            Same("log_slope_percent", slope.Relative.Value);
            Same("intercept", slope.Intercept.Value);
            Same("first", session.TimesSeconds[0]);
            Same("last", session.TimesSeconds[^1]);
            Same("percent_decrement_first", 100 * (profile.Total.GetOrThrow().Value / (times.Length * session.TimesSeconds[0]) - 1));
            Same("slope_percent_of_mean", 100 * slope.Linear.Value / profile.Mean.Value);
            Same("first_half_mean", Descriptive.Mean(times[..(times.Length / 2)]));
            Same("second_half_mean", Descriptive.Mean(times[((times.Length + 1) / 2)..]));
        }
    }

    [Fact]
    public void Adding_a_constant_to_every_set_moves_the_level_and_not_the_spread() =>
        Gen.Select(Gen.Double[40, 120].Array[2, 12], Gen.Double[0.1, 30]).Sample((times, shift) =>
        {
            var before = SetProfile.Summarize(WorkedData.One(times)).GetOrThrow();
            var after = SetProfile.Summarize(WorkedData.One([.. times.Select(time => time + shift)])).GetOrThrow();
            Assert.Equal(before.Mean.Value + shift, after.Mean.Value, 1e-9);
            Assert.Equal(before.StandardDeviation.GetOrThrow().Value, after.StandardDeviation.GetOrThrow().Value, 1e-9);
            Assert.Equal(before.Range.Value, after.Range.Value, 1e-9);
        });
}
