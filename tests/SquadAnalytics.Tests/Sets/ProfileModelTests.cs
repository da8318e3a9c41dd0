using CsCheck;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class ProfileModelTests
{
    private static readonly ProfileModelOptions AfterThree = new(3) { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void One_athletes_contrast_is_the_mean_of_the_contrasts_session_by_session()
    {
        // R 4.2.2, lme4 1.1-31: m <- lmer(log(y) ~ factor(set) + (1 | session)); w <- c(0, -1/3, -1/3, 1/2, 1/2); sum(fixef(m) * w) = 0.0911177527, sqrt(w %*% vcov(m) %*% w) = 0.00398530702;
        // kink: 0.01227401026, SE 0.00199265351; SDs 0.007710876, 0.0106937009.
        var model = ProfileModel.Fit(WorkedData.SixSessions, AfterThree).GetOrThrow();
        Assert.Equal(0.0911177527, Log(model.LateContrast), 1e-9);
        Assert.Equal(0.00398530702, LogError(model.LateContrast), 1e-8);
        Assert.Equal(20, model.LateContrast.DegreesOfFreedom!.Value, 1e-3);
        Assert.Equal(0.01227401026, Log(model.KinkContrast), 1e-9);
        Assert.Equal(0.00199265351, LogError(model.KinkContrast), 1e-8);
        Assert.Equal(0.0106937009, Log(model.SetNoise), 1e-8);
        Assert.Equal(0.007710876, Log(model.SessionSpread), 1e-7);

        // R 4.2.2: t.test over the six contrasts: mean 0.09111775, standard error 0.0026954, which does not assume equal correlation.
        var bySession = LateSlowdown.Fit(WorkedData.SixSessions, new LateSlowdownOptions { AfterSet = 3, Scale = Scale.Log, Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(bySession.LateContrast.Value, model.LateContrast.Value, 1e-9);
        Assert.Equal(0.0026954, LogError(bySession.LateContrast), 5e-8);
        Assert.Equal("Not enough data for how athletes' levels differ: needs 2 athletes, has 1 athletes.", model.AthleteSpread.ToString());
    }

    [Fact]
    public void Athletes_who_differ_in_their_late_effect_match_R()
    {
        // R 4.2.2, lme4 1.1-31: m <- lmer(y ~ factor(set) + (1 | a) + (0 + late | a) + (1 | a:s)); sum(fixef(m) * w); sqrt(w %*% vcov(m) %*% w); VarCorr(m); ranef(m, condVar = TRUE)$a$late.
        var model = ProfileModel.Fit(SevenAthletes, AfterThree).GetOrThrow();
        Assert.Equal(0.0502, Log(model.LateContrast), 1e-9);
        ReferenceData.AssertClose(0.00489039569157, LogError(model.LateContrast), 1e-4);
        Assert.Equal(0.0711428571429, Log(model.SetsAgainstFirst[3]), 1e-9);
        ReferenceData.AssertClose(0.00522390044991, LogError(model.SetsAgainstFirst[3]), 1e-4);
        ReferenceData.AssertClose(0.01226971722123, Log(model.LateSpread.GetOrThrow()), 1e-4);
        ReferenceData.AssertClose(0.09354586621075, Log(model.AthleteSpread.GetOrThrow()), 1e-4);
        ReferenceData.AssertClose(0.00870280000799, Log(model.SessionSpread), 1e-4);
        ReferenceData.AssertClose(0.01005957139802, Log(model.SetNoise), 1e-5);
        double[] deviations = [-0.015200558393, 0.008033032182, -0.003716237471, 0.012592914336, -0.000145262933, -0.013879247660, 0.012315359939];
        for (var i = 0; i < deviations.Length; i++) Assert.Equal(deviations[i], Log(model.Athletes[i].Deviation.GetOrThrow()), 1e-6);
        ReferenceData.AssertClose(0.00389390461903, LogError(model.Athletes[0].Deviation.GetOrThrow()), 1e-4);
        Assert.Null(model.Athletes[0].Deviation.GetOrThrow().Interval);

        // R 4.2.2: integrate() over p, from 0 to 1, of t distributions with nu + 4 df, nu = 28, c the 7 mean contrasts, s^2 the pooled variance of a contrast over 5, SS = sum((c - mean(c))^2),
        // B = min(1, 4 s^2 / SS * qf(1 - p, 4, nu)), mean (1 - B) c + B mean(c), scale^2 (nu + B SS / s^2) / (nu + 4) (1 - B + B / 7) s^2; limits by uniroot().
        var late = model.Athletes[0].Late.GetOrThrow();
        double[] posterior = [0.0342916186299, 0.00362319107839, 0.0283969329202, 0.0402775733259];
        Assert.Equal(posterior, [Log(late), LogError(late), Math.Log(1 + late.Lower!.Value / 100), Math.Log(1 + late.Upper!.Value / 100)], (wanted, got) => Math.Abs(wanted - got) < 2e-6);
    }

    [Fact]
    public void Late_effects_without_variance_are_left_out_and_the_notes_say_so()
    {
        // All athletes get the six sessions of one: no difference between their late effects can be seen.
        Session[] alike = [.. Enumerable.Range(0, 6).SelectMany(athlete => WorkedData.SixSessions.Select((session, week) => WorkedData.One([.. session.TimesSeconds.Select(time => time * (1 + 0.02 * athlete))], week, $"a{athlete}")))];
        var model = ProfileModel.Fit(alike, AfterThree).GetOrThrow();
        Assert.Equal("Not enough data for how athletes' late effects differ: needs late effects that differ by more than the set noise, has late effects without variance.", model.LateSpread.ToString());
        Assert.Contains("Singular fit: refitted without a random late between athlete, which showed no variance.", model.Notes);
        Assert.Contains("All athletes are taken to slow alike: the interval is too narrow if they do not.", model.Notes);
        Assert.Equal(Refusal.BoundarySolution, model.Athletes[0].Late.Refusal!.Reason);
    }

    [Fact]
    public void Own_late_effects_need_six_athletes_with_four_sessions()
    {
        var model = ProfileModel.Fit([.. SevenAthletes.Where(session => session.AthleteId is not ("a0" or "a1"))], AfterThree).GetOrThrow();
        Assert.Equal("Not enough data for how athletes' late effects differ: needs 6 athletes with 4 eligible sessions, has 5 athletes with 4 eligible sessions.", model.LateSpread.ToString());
        Assert.Contains("Athletes' own late effects were not asked for: only 5 athletes have 4 sessions or more, 6 are needed.", model.Notes);
    }

    [Fact]
    public void Thin_data_are_refused()
    {
        Assert.Equal("Not enough data for the profile model: needs 4 eligible sessions, has 3 eligible sessions.", ProfileModel.Fit([.. WorkedData.SixSessions.Take(3)], AfterThree).ToString());
        Assert.Equal(Refusal.TooFewSets, ProfileModel.Fit(WorkedData.Sessions([60, 61], [61, 62], [60, 63], [61, 61]), new ProfileModelOptions(1) { Selection = SelectionOptions.KeepAll }).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => ProfileModel.Fit(WorkedData.SixSessions, new ProfileModelOptions(5) { Selection = SelectionOptions.KeepAll }));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ProfileModelOptions(0));
    }

    [Fact]
    public void A_factor_on_all_times_and_the_order_of_sessions_do_not_matter() =>
        Gen.Select(Gen.Double[0.5, 2], Gen.Shuffle(SevenAthletes.ToArray())).Sample((factor, shuffled) =>
        {
            var plain = ProfileModel.Fit(SevenAthletes, AfterThree).GetOrThrow();
            var other = ProfileModel.Fit([.. shuffled.Select(session => Session.FromTimes(session.Id, session.AthleteId, session.Date, session.Protocol, [.. session.TimesSeconds.Select(time => factor * time)]))], AfterThree).GetOrThrow();
            Assert.Equal(plain.LateContrast.Value, other.LateContrast.Value, 1e-7);
            ReferenceData.AssertClose(plain.LateContrast.StandardError!.Value, other.LateContrast.StandardError!.Value, 1e-4);
            ReferenceData.AssertClose(plain.Athletes[3].Deviation.GetOrThrow().Value, other.Athletes[3].Deviation.GetOrThrow().Value, 1e-4);
        }, iter: 10);

    /// <summary>Seven athletes, five sessions of five sets, made by a rule that R repeats: levels, a drift, late effects of their own, sessions and scatter.</summary>
    private static IReadOnlyList<Session> SevenAthletes { get; } =
    [
        .. Enumerable.Range(0, 7).SelectMany(i => Enumerable.Range(0, 5).Select(s => WorkedData.One(
            [.. Enumerable.Range(1, 5).Select(k => Math.Exp(
                Math.Log(60 + 3 * i) + 0.012 * (k - 1) + (k > 3 ? 0.02 + 0.008 * (i * 3 % 5 - 2) : 0) + ((i * 5 + s * 3) % 7 - 3) * 0.004 + ((i * 7 + s * 5 + k * 3 + i * s * k) % 11 - 5) * 0.003))],
            s, $"a{i}"))),
    ];

    private static double Log(Estimate percent) => Math.Log(1 + percent.Value / 100);

    private static double LogError(Estimate percent) => percent.StandardError!.Value / (100 + percent.Value);
}
