using CsCheck;
using SquadAnalytics.Change;
using SquadAnalytics.SampleSquad;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Change;

public sealed class SquadTrendTests
{
    private const string Seed = "0N0XIzNsQ0O2";
    private static readonly SquadTrendOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void A_singular_fit_is_simplified_step_by_step_and_says_which_model_was_used()
    {
        // R 4.2.2, lme4 1.1-31, w = 0:3 - 10/7: lmer(y ~ w + (w | a)) has correlation -1; lmer(y ~ w + (w || a)) a slope SD of 0; lmer(y ~ w + (1 | a)) stands:
        // -1.88625 (SE 0.4000678443), level 323.7753571 (9.29516785), SDs 26.26012352, 2.530251213; in logarithms -0.005696281139 (0.001181738706).
        var season = SquadTrend.Fit(WorkedData.EightAthletes, All).GetOrThrow();
        Assert.Equal(SquadTrendForm.LevelsOnly, season.Form);
        Assert.Equal(-1.88625, season.Slope.Value, 5e-9);
        Assert.Equal(0.4000678443, season.Slope.StandardError!.Value, 1e-7);
        Assert.Equal(Unit.SecondsPerWeek, season.Slope.Unit);
        Assert.Equal(323.7753571, season.Level.Value, 5e-7);
        Assert.Equal(9.29516785, season.Level.StandardError!.Value, 1e-4);
        Assert.Equal(26.26012352, season.LevelSpread.Value, 3e-4);
        Assert.Equal(2.530251213, season.ResidualStandardDeviation.Value, 1e-5);
        Assert.Equal(-95.2333, season.Model.LogLikelihood, 5e-5);
        var relative = season.RelativeSlope.GetOrThrow();
        Assert.Equal(100 * (Math.Exp(-0.005696281139) - 1), relative.Value, 1e-6);
        Assert.Equal(100 * Math.Exp(-0.005696281139) * 0.001181738706, relative.StandardError!.Value, 1e-6);
        Assert.Equal("The model that was used: athletes differ in level, with one slope for all.", season.Notes[0]);
        Assert.Contains("Singular fit: refitted without the correlation of intercept and week between athlete.", season.Notes);
        Assert.Contains("Singular fit: refitted without a random week between athlete, which showed no variance.", season.Notes);
        Assert.Equal("Not enough data for how athletes' slopes differ: needs slopes that differ by more than the noise of the tests, has slopes without variance.", season.SlopeSpread.ToString());
        Assert.Equal(Refusal.BoundarySolution, season.Athletes[0].SlopeDeviation.Refusal!.Reason);
        Assert.Equal(Refusal.BoundarySolution, season.Correlation.Refusal!.Reason);
    }

    [Fact]
    public void The_plain_t_over_the_athletes_own_slopes_stands_beside_it()
    {
        // R 4.2.2: s <- sapply(split(d, d$a), function(x) coef(lm(y ~ w, x))[2]); t.test(s, conf.level = .9).
        var mean = SquadTrend.Fit(WorkedData.EightAthletes, All).GetOrThrow().MeanOfOwnSlopes.GetOrThrow();
        Assert.Equal(-1.88625, mean.Value, 1e-9);
        Assert.Equal(-2.507521352, mean.Lower!.Value, 5e-9);
        Assert.Equal(-1.264978648, mean.Upper!.Value, 5e-9);
        Assert.Equal(0.0006968706, mean.PValue!.Value, 5e-10);
        Assert.Equal(7, mean.DegreesOfFreedom);
    }

    [Fact]
    public void Athletes_are_pulled_toward_the_squad()
    {
        // R 4.2.2, lme4: ranef(lmer(y ~ w + (1 | a)), condVar = TRUE), coef(); standard error of a level by the covariance of Henderson's equations of that fit, the noise of a test in the place of the model's being that about own lines,
        // sum(resid(lm(y ~ w))^2) / 16 = 7.3213125 over athletes (with the model's 2.530251213^2 it is 1.264166302, as by solve() of the equations).
        var season = SquadTrend.Fit(WorkedData.EightAthletes, All).GetOrThrow();
        Assert.Equal(2.4037958, season.Athlete("B1").LevelDeviation.Value, 1e-5);
        Assert.Equal(37.0483860, season.Athlete("B7").LevelDeviation.Value, 1e-5);
        Assert.Equal(1.263659995, season.Athlete("B7").LevelDeviation.StandardError!.Value, 1e-5);
        Assert.Equal(326.1791530, season.Athlete("B1").Level.Value, 1e-5);
        Assert.Equal(1.351630483, season.Athlete("B1").Level.StandardError!.Value, 1e-5);
        Assert.Equal(16, season.Athlete("B1").Level.DegreesOfFreedom);
        Assert.Equal(4, season.Athlete("B1").Tests);
        Assert.Throws<ArgumentException>(() => season.Athlete("nobody"));
    }

    [Fact]
    public void A_slope_pulled_toward_the_squad_is_the_mixture_over_the_belief_in_the_spread()
    {
        // R 4.2.2, from the sample's CSV files: own slopes b, v their squared errors with nu = 314 degrees of freedom; pf(Q(w) / 14, 14, nu, lower.tail = FALSE) on 6,000 w from 0 to 3,
        // each w the t distribution of the remarks with nu + 14 degrees of freedom; mean and 2.5 % and 97.5 % by uniroot. The grid of the library has 160 cells.
        var season = SquadTrend.Fit(SquadGenerator.Generate(Scenarios.Quillmere).Squad.Sessions, new() { Level = ConfidenceLevel.NinetyFive, Selection = new SelectionOptions { Protocol = Scenarios.Quillmere.MainTest.Protocol } }).GetOrThrow();
        foreach (var (athlete, mean, lower, upper) in new[] { ("b01", -0.614792, -0.826788, -0.405626), ("b03", -0.096976, -0.302023, 0.110644), ("b15", -0.932782, -1.192216, -0.680111) })
        {
            var slope = season.Athlete(athlete).Slope.GetOrThrow();
            Assert.Equal(mean, slope.Value, 2e-4);
            Assert.Equal(lower, slope.Lower!.Value, 2e-4);
            Assert.Equal(upper, slope.Upper!.Value, 2e-4);
        }
    }

    [Fact]
    public void Own_slopes_of_fewer_than_five_tests_are_not_shown()
    {
        var season = SquadTrend.Fit(WorkedData.EightAthletes, All).GetOrThrow();
        Assert.All(season.Athletes, athlete => Assert.Equal("Not enough data for the athlete's own slope: needs 5 tests of different dates, has 4 tests of different dates.", athlete.OwnSlope.ToString()));
    }

    [Fact]
    public void Slopes_pulled_toward_the_squad_need_six_athletes_with_five_tests()
    {
        var four = SquadTrend.Fit(WorkedData.EightAthletes, All).GetOrThrow();
        Assert.All(four.Athletes, athlete => Assert.Equal("Not enough data for the athlete's slope: needs 6 athletes with 5 tests of different dates, has 0 athletes with 5 tests of different dates.", athlete.Slope.ToString()));
        Assert.DoesNotContain(four.Notes, note => note.StartsWith("Slopes of athletes come from their own lines", StringComparison.Ordinal));

        // By hand: one slope of -1 s/week for all, the same scatter about every line, so that nothing but the common slope can be believed; the model keeps no slopes, athletes have theirs all the same.
        double[] scatter = [3, -4, 1, 1, -4, 3];
        var alike = SquadTrend.Fit(WorkedData.Weekly([.. Enumerable.Range(0, 8).Select(athlete => scatter.Select((step, week) => 300 + (10 * athlete) - week + step).ToArray())]), All).GetOrThrow();
        Assert.Equal(SquadTrendForm.LevelsOnly, alike.Form);
        Assert.All(alike.Athletes, athlete => Assert.Equal(-1, athlete.Slope.GetOrThrow().Value, 1e-9));
        Assert.All(alike.Athletes, athlete => Assert.Equal(Refusal.BoundarySolution, athlete.SlopeDeviation.Refusal!.Reason));
        Assert.Contains(alike.Notes, note => note.StartsWith("Slopes of athletes come from their own lines", StringComparison.Ordinal));
    }

    [Fact]
    public void Slopes_of_athletes_are_not_asked_for_where_few_have_three_tests()
    {
        // R 4.2.2, lme4: lmer(y ~ w + (1 | a)) of weeks 0 and 1: -2.1 (SE 1.58215494).
        var season = SquadTrend.Fit([.. WorkedData.EightAthletes.Where(session => session.Date < new DateOnly(2031, 1, 20))], All).GetOrThrow();
        Assert.Equal(SquadTrendForm.LevelsOnly, season.Form);
        Assert.Equal(-2.1, season.Slope.Value, 1e-6);
        Assert.Equal(1.58215494, season.Slope.StandardError!.Value, 1e-5);
        Assert.Equal("Not enough data for how athletes' slopes differ: needs 6 athletes with 3 tests, has 0 athletes with 3 tests.", season.SlopeSpread.ToString());
        Assert.Equal("Not enough data for the mean of the athletes' own slopes: needs 6 athletes with 3 tests, has 0 athletes with 3 tests.", season.MeanOfOwnSlopes.ToString());
        Assert.Contains("Slopes of athletes were not asked for: only 0 athletes have 3 tests or more, 6 are needed.", season.Notes);
    }

    [Fact]
    public void Thin_squads_are_refused()
    {
        Assert.Equal("Not enough data for the squad's season: needs 6 athletes with an eligible test, has 5 athletes with an eligible test.", SquadTrend.Fit([.. WorkedData.EightAthletes.Take(20)], All).ToString());
        Assert.Equal("Not enough data for the squad's season: needs tests of several dates, has tests of one date.", SquadTrend.Fit([.. WorkedData.EightAthletes.Where(session => session.Id.EndsWith("w0", StringComparison.Ordinal))], All).ToString());
        Session[] lone = [.. WorkedData.EightAthletes.Where((session, i) => i % 5 == 0), WorkedData.Total(300, 2, "C1")];
        Assert.Equal(Refusal.WeaklyIdentified, SquadTrend.Fit([.. lone.DistinctBy(session => session.AthleteId)], All).Refusal!.Reason);
        Assert.Equal(Refusal.MixedProtocols, SquadTrend.Fit([.. WorkedData.EightAthletes, WorkedData.One([60, 60, 60], 1, "B1", WorkedData.WithSets(3)) with { Id = "other" }], All).Refusal!.Reason);
    }

    [Fact]
    public void A_shift_moves_levels_only_and_a_scale_carries_over() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[0.5, 2]).Sample((shift, scale) =>
        {
            var plain = SquadTrend.Fit(SixSeasons, All).GetOrThrow();
            var moved = SquadTrend.Fit(SeasonData.Changed(SixSeasons, total => total + shift), All).GetOrThrow();
            var scaled = SquadTrend.Fit(SeasonData.Changed(SixSeasons, total => total * scale), All).GetOrThrow();
            ReferenceData.AssertClose(plain.Slope.Value, moved.Slope.Value, 1e-6);
            ReferenceData.AssertClose(plain.Level.Value + shift, moved.Level.Value, 1e-6);
            ReferenceData.AssertClose(plain.SlopeSpread.GetOrThrow().Value, moved.SlopeSpread.GetOrThrow().Value, 1e-4);
            ReferenceData.AssertClose(scale * plain.Slope.Lower!.Value, scaled.Slope.Lower!.Value, 1e-4);
            ReferenceData.AssertClose(scale * plain.Athletes[2].Level.Value, scaled.Athletes[2].Level.Value, 1e-6);
            ReferenceData.AssertClose(plain.RelativeSlope.GetOrThrow().Value, scaled.RelativeSlope.GetOrThrow().Value, 1e-6);
        }, iter: 20, seed: Seed);

    [Fact]
    public void The_order_of_athletes_and_sessions_does_not_matter() =>
        Gen.Shuffle(SixSeasons.ToArray()).Sample(
            shuffled => Assert.Equal(SquadTrend.Fit(SixSeasons, All).GetOrThrow().ToString(), SquadTrend.Fit(shuffled, All).GetOrThrow().ToString()), iter: 20, seed: Seed);

    [Fact]
    public void An_athlete_with_one_test_changes_no_estimate_within_athletes() =>
        Gen.Select(Gen.Double[200, 400], Gen.Int[0, 9]).Sample((total, week) =>
        {
            var plain = SquadTrend.Fit(SixSeasons, All).GetOrThrow();
            var more = SquadTrend.Fit([.. SixSeasons, WorkedData.Total(total, week, "newcomer")], All).GetOrThrow();
            Assert.Equal(plain.MeanOfOwnSlopes.ToString(), more.MeanOfOwnSlopes.ToString());
            Assert.Equal(plain.Athletes[0].OwnSlope.ToString(), more.Athletes[0].OwnSlope.ToString());
            Assert.Equal(1, more.Athlete("newcomer").Tests);
        }, iter: 20, seed: Seed);

    /// <summary>Six athletes, ten weeks, slopes from -1.5 to +0.5 s/week, seeded noise.</summary>
    private static IReadOnlyList<Session> SixSeasons { get; } = Season(new SeededRandom(31));

    private static IReadOnlyList<Session> Season(SeededRandom random) => WorkedData.Weekly(
        [.. Enumerable.Range(0, 6).Select(athlete => Enumerable.Range(0, 10).Select(week => 300 + 12 * athlete + (0.4 * athlete - 1.5) * week + 2 * random.NextNormal()).ToArray())]);
}
