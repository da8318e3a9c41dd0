using SquadAnalytics.Benchmarks.Simulations;
using SquadAnalytics.Load;
using SquadAnalytics.SampleSquad;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Sets;

public sealed class ExplanationsTests
{
    // Counts beyond which a true rate of 5 % is unlikely: R 4.2.2: qbinom(0.999, 120, 0.05) = 14.
    private const int Runs = 120;
    private const int MostFalseAlarms = 14;
    private static readonly ExplanationsOptions Named = new() { AfterSet = 3, Selection = SelectionOptions.KeepAll };
    private static readonly ExplanationsOptions Searched = Named with { AfterSet = null };

    [Fact]
    public void A_planted_late_break_is_named_in_at_least_eighty_percent_of_squads_with_one_percent_noise()
    {
        var boxer = new VirtualBoxer { SetNoisePercent = 1, DriftPercentPerSet = 0.6, BreakPercent = 5 };
        var (named, found) = (0, 0);
        for (var run = 0; run < 40; run++)
        {
            var sessions = boxer.Sessions(new SeededRandom(100 + run), 12);
            if (IsSupported(sessions, Named, ExplanationCause.LateBreak)) named++;
            if (Explanations.Fit(sessions, Searched).GetOrThrow() is { AfterSet: 3 } result && result[ExplanationCause.LateBreak].Standing == ExplanationStanding.Supported) found++;
        }

        Assert.InRange(named, 32, 40);
        Assert.InRange(found, 32, 40);
    }

    [Fact]
    public void A_planted_station_is_named_in_at_least_eighty_percent_of_squads_with_one_percent_noise()
    {
        var boxer = new VirtualBoxer { SetNoisePercent = 1, DriftPercentPerSet = 0.6, BreakPercent = 5, BreakStation = 2 };
        var station = boxer.Test.Protocol.Stations[1].Name;
        var named = Enumerable.Range(0, 40).Count(run => Explanations.Fit(boxer.Sessions(new SeededRandom(300 + run), 12), Named).GetOrThrow()[ExplanationCause.OneStation] is { Standing: ExplanationStanding.Supported } found && found.Name.EndsWith(station, StringComparison.Ordinal));
        Assert.InRange(named, 32, 40);
    }

    [Theory]
    [InlineData(0, 3)]
    [InlineData(0.6, 3)]
    [InlineData(0, null)]
    [InlineData(0.6, null)]
    public void Noise_and_a_steady_drift_get_no_late_break_and_no_station_beyond_the_nominal_rate(double drift, int? afterSet)
    {
        var boxer = new VirtualBoxer { SetNoisePercent = 1, DriftPercentPerSet = drift };
        var options = Named with { AfterSet = afterSet };
        var results = Enumerable.Range(0, Runs).Select(run => Explanations.Fit(boxer.Sessions(new SeededRandom(1000 + run), 10), options).GetOrThrow()).ToList();
        Assert.InRange(results.Count(result => result.Supported.Any(candidate => candidate.Cause is not (ExplanationCause.Noise or ExplanationCause.SteadyDrift))), 0, MostFalseAlarms);
        if (drift == 0) Assert.InRange(results.Count(result => result.Supported.Any(candidate => candidate.Cause != ExplanationCause.Noise)), 0, MostFalseAlarms);
    }

    [Fact]
    public void A_steady_drift_is_named_and_not_a_break_where_the_tests_suffice()
    {
        var boxer = new VirtualBoxer { SetNoisePercent = 1, DriftPercentPerSet = 1 };
        var results = Enumerable.Range(0, 20).Select(run => Explanations.Fit(boxer.Sessions(new SeededRandom(2000 + run), 16), Named).GetOrThrow()).ToList();
        Assert.InRange(results.Count(result => result[ExplanationCause.SteadyDrift].Standing == ExplanationStanding.Supported), 16, 20);
    }

    [Fact]
    public void With_few_noisy_tests_it_cannot_tell()
    {
        // A break of 2 % among 4 tests with 3 % noise: nothing can be named reliably.
        var boxer = new VirtualBoxer { SetNoisePercent = 3, DriftPercentPerSet = 0.4, BreakPercent = 2 };
        var results = Enumerable.Range(0, 20).Select(run => Explanations.Fit(boxer.Sessions(new SeededRandom(3000 + run), 4), Named).GetOrThrow()).ToList();
        Assert.InRange(results.Count(result => result.CannotTell), 14, 20);
        Assert.All(results.Where(result => result.CannotTell), result => Assert.StartsWith("Cannot tell", result.Conclusion, StringComparison.Ordinal));
    }

    [Fact]
    public void A_boxer_who_does_not_slow_leaves_nothing_to_explain()
    {
        var boxer = new VirtualBoxer { SetNoisePercent = 0.5 };
        var result = Explanations.Fit(boxer.Sessions(new SeededRandom(5), 20), Named).GetOrThrow();
        Assert.Equal(ExplanationStanding.Supported, result[ExplanationCause.Noise].Standing);
        Assert.False(result.CannotTell);
        Assert.StartsWith("Nothing to explain", result.Conclusion, StringComparison.Ordinal);
    }

    [Fact]
    public void A_first_set_that_is_always_too_fast_is_not_called_a_late_break()
    {
        var random = new SeededRandom(8);
        var sessions = WorkedData.Sessions([.. Enumerable.Range(0, 12).Select(_ => Enumerable.Range(0, 5).Select(k => (k == 0 ? 60 : 63) + 0.4 * random.NextNormal()).ToArray())]);
        var result = Explanations.Fit(sessions, Searched).GetOrThrow();
        Assert.Equal(1, result.AfterSet);
        Assert.Equal(ExplanationStanding.CannotTell, result[ExplanationCause.LateBreak].Standing);
        Assert.Contains(result[ExplanationCause.LateBreak].Contradicts, text => text.Contains("one shape", StringComparison.Ordinal));
    }

    [Fact]
    public void Slope_and_step_are_those_of_a_regression_with_both()
    {
        // R 4.2.2: co <- t(apply(y, 1, function(r) coef(lm(r ~ k + (k > 3))))); t.test(co[, j], conf.level = 0.9) with k = 1:5 and the six sessions as rows of y.
        var result = Explanations.Fit(WorkedData.SixSessions, Named).GetOrThrow();
        var (slope, step) = (result[ExplanationCause.SteadyDrift].Effect.GetOrThrow(), result[ExplanationCause.LateBreak].Effect.GetOrThrow());
        Assert.Equal([1.08333333333, 0.919657591411, 1.247009075256], [slope.Value, slope.Lower!.Value, slope.Upper!.Value], (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal([3.26666666667, 2.64353228657, 3.88980104676], [step.Value, step.Lower!.Value, step.Upper!.Value], (a, b) => Math.Abs(a - b) < 1e-9);
        // Alone, a break accounts for the whole slow-down (by definition).
        Assert.Equal(result.Slowdown.Value, result[ExplanationCause.LateBreak].Accounts.GetOrThrow().Value, 1e-9);
    }

    [Fact]
    public void Sleep_that_goes_with_the_slow_down_is_named_and_missing_days_are_refused()
    {
        // By construction: an hour of sleep less adds 2 s to the late sets, on top of 3 s.
        var random = new SeededRandom(4);
        double[] sleep = [.. Enumerable.Range(0, 14).Select(_ => 7 + random.NextNormal())];
        var sessions = WorkedData.Sessions([.. sleep.Select(hours => Enumerable.Range(0, 5).Select(k => 60 + (k >= 3 ? 3 - 2 * (hours - 7) : 0) + 0.3 * random.NextNormal()).ToArray())]);
        DayContext[] days = [.. sessions.Select((session, s) => new DayContext(session.AthleteId, session.Date) { SleepHours = sleep[s] })];
        var options = Named with { Days = days, Circumstance = Circumstance.Sleep };
        var named = Explanations.Fit(sessions, options).GetOrThrow()[ExplanationCause.Circumstance];
        Assert.Equal(ExplanationStanding.Supported, named.Standing);
        Assert.True(named.Effect.GetOrThrow().Upper < 0);
        var thin = Explanations.Fit(sessions, options with { Days = days[..9] }).GetOrThrow()[ExplanationCause.Circumstance];
        Assert.Equal((ExplanationStanding.CannotTell, Refusal.TooFewSessions), (thin.Standing, thin.Effect.Refusal!.Reason));
    }

    [Fact]
    public void The_sample_boxer_who_breaks_late_is_named_in_squads_drawn_anew()
    {
        var scenario = Scenarios.Quillmere with { Effects = new SampleEffects { SetNoisePercent = 1 } };
        var (named, drawn) = (0, 0);
        for (var seed = 1; seed <= 5; seed++)
        {
            var generated = SquadGenerator.Generate(scenario.WithSeed(seed));
            var sessions = generated.Squad.SessionsOf(generated.Truth.LateBreaker.AthleteId).Where(session => session.Protocol.Key == scenario.MainTest.Protocol.Key && session.IsComplete && !session.IsVoid).Take(13).ToList();
            drawn++;
            if (IsSupported(sessions, new ExplanationsOptions { AfterSet = 3, Days = generated.Squad.Contexts }, ExplanationCause.LateBreak)) named++;
        }

        Assert.InRange(named, 0.8 * drawn, drawn);
    }

    [Fact]
    public void Too_little_is_refused_and_every_candidate_says_what_would_settle_it()
    {
        Assert.Equal(Refusal.TooFewSessions, Explanations.Fit([.. WorkedData.SixSessions.Take(3)], Named).Refusal!.Reason);
        Assert.Throws<ArgumentOutOfRangeException>(() => Explanations.Fit(WorkedData.SixSessions, Named with { AfterSet = 5 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ExplanationsOptions { Matters = new Percent(0) });
        var result = Explanations.Fit(WorkedData.SixSessions, Named).GetOrThrow();
        Assert.Equal(Enum.GetValues<ExplanationCause>(), result.Candidates.Select(candidate => candidate.Cause));
        Assert.All(result.Candidates, candidate => Assert.NotEmpty(candidate.Separates));
        // Work and rest are one variable on one start interval, so that the clock is never named.
        Assert.NotEqual(ExplanationStanding.Supported, result[ExplanationCause.ClockFeedback].Standing);
    }

    [Fact]
    public void A_start_one_SD_faster_costs_the_slope_times_that_SD_of_the_logarithms_in_seconds()
    {
        // R 4.2.2, the 20 complete tests of the late breaker in the sample's CSV files but the first, Y a row of six times each:
        // m <- lm(rowMeans(log(Y[, 2:6])) ~ log(Y[, 1]) + date); f <- -sd(log(Y[, 1])) * mean(Y); f * coef(m)[2]; f * confint(m, level = .9)[2, ].
        var sample = SquadGenerator.Generate(Scenarios.Quillmere);
        var options = new ExplanationsOptions { AfterSet = 3, Selection = new SelectionOptions { Protocol = Scenarios.Quillmere.MainTest.Protocol } };
        var cost = Explanations.Fit(sample.Squad.SessionsOf(sample.Truth.LateBreaker.AthleteId), options).GetOrThrow()[ExplanationCause.FastStart].Accounts.GetOrThrow();
        Assert.Equal(-0.588547123403, cost.Value, 5e-10);
        Assert.Equal(-0.934544379153, cost.Lower!.Value, 5e-10);
        Assert.Equal(-0.242549867654, cost.Upper!.Value, 5e-10);
    }

    private static bool IsSupported(IReadOnlyList<Session> sessions, ExplanationsOptions options, ExplanationCause cause) =>
        Explanations.Fit(sessions, options).GetOrThrow()[cause].Standing == ExplanationStanding.Supported;
}
