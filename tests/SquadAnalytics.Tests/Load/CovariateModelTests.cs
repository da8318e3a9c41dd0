using CsCheck;
using SquadAnalytics.Load;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Load;

public sealed class CovariateModelTests
{
    private static readonly CovariateModelOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void Circumstances_are_split_into_the_athletes_mean_and_the_deviation_from_it()
    {
        // R 4.2.2, lme4 1.1-31: xB <- ave(x, athlete); xW <- x - xB; lmer(y ~ w + sleepW + sleepB + sparW + sparB + (1 | athlete)).
        var model = CovariateModel.Fit(LoadedSquad.Seven, LoadedSquad.SevenDays, All).GetOrThrow();
        Assert.Equal(-1.145838080229, model[Circumstance.Sleep].Within.GetOrThrow().Value, 1e-6);
        Assert.Equal(0.1525909338, model[Circumstance.Sleep].Within.GetOrThrow().StandardError!.Value, 1e-6);
        Assert.Equal(Unit.SecondsPerHour, model[Circumstance.Sleep].Within.GetOrThrow().Unit);
        ReferenceData.AssertClose(88.929217568761, model[Circumstance.Sleep].Between.GetOrThrow().Value, 1e-6);
        Assert.Equal(0.783123910080, model[Circumstance.Sparring].Within.GetOrThrow().Value, 1e-6);
        Assert.Equal(0.0976323483952, model[Circumstance.Sparring].Within.GetOrThrow().StandardError!.Value, 1e-6);
        ReferenceData.AssertClose(-27.823713837003, model[Circumstance.Sparring].Between.GetOrThrow().Value, 1e-6);
        Assert.Equal(-0.483356309709, model.Trend!.Value, 1e-6);
        Assert.Equal(0.8056869312, model.Model.ResidualStandardDeviation.Value, 1e-6);
        Assert.Equal((7, 56), (model.Athletes, model.Tests));
    }

    [Fact]
    public void A_circumstance_that_is_alike_for_all_athletes_has_no_part_between_them()
    {
        var model = CovariateModel.Fit(LoadedSquad.Seven, LoadedSquad.SevenDays, All with { Covariates = [Circumstance.Temperature] }).GetOrThrow();
        Assert.Equal("Not enough data for the temperature at the test between athletes: needs athletes whose means differ, has means that do not.", model[Circumstance.Temperature].Between.ToString());
        Assert.Equal(Unit.SecondsPerDegree, model[Circumstance.Temperature].Within.GetOrThrow().Unit);
        Assert.Throws<ArgumentException>(() => model[Circumstance.Sleep]);
    }

    [Fact]
    public void A_total_is_never_adjusted_for_the_rating_of_its_own_session()
    {
        var refusal = CovariateModel.Fit(LoadedSquad.Seven, LoadedSquad.SevenDays, All with { Covariates = [Circumstance.Sleep, Circumstance.SessionRating] }).Refusal!;
        Assert.Equal(Refusal.NotComparable, refusal.Reason);
        Assert.Equal("Not enough data for the model of circumstances: needs circumstances that are known before the test, has the rating of the session itself, which is an outcome of it.", refusal.ToString());
        var explained = Explanations.Fit(WorkedData.SixSessions, new ExplanationsOptions { AfterSet = 3, Circumstance = Circumstance.SessionRating, Days = LoadedSquad.SevenDays, Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(Refusal.NotComparable, explained[ExplanationCause.Circumstance].Effect.Refusal!.Reason);
    }

    [Fact]
    public void Tests_for_which_a_circumstance_is_not_written_down_are_left_out_and_counted()
    {
        var model = CovariateModel.Fit(LoadedSquad.Seven, [.. LoadedSquad.SevenDays.Skip(3)], All).GetOrThrow();
        Assert.Equal(53, model.Tests);
        Assert.Equal(3, model[Circumstance.Sleep].TestsWithout);
        Assert.Contains("3 eligible tests are left out: a circumstance is not written down, or it is the athlete's only one.", model.Notes);
        Assert.Equal(
            "Not enough data for the model of circumstances: needs 6 athletes with two tests for which all circumstances are written down, has 0 athletes with two tests for which all circumstances are written down.",
            CovariateModel.Fit(LoadedSquad.Seven, LoadedSquad.SevenDays, All with { Covariates = [Circumstance.BodyMass] }).ToString());
        DayContext[] alike = [.. LoadedSquad.SevenDays.Select(day => day with { SleepHours = 7 })];
        Assert.Equal(Refusal.ZeroVariance, CovariateModel.Fit(LoadedSquad.Seven, alike, All with { Covariates = [Circumstance.Sleep] }).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => new CovariateModelOptions { Covariates = [Circumstance.Sleep, Circumstance.Sleep] });
    }

    [Fact]
    public void An_hour_more_sleep_for_one_athlete_changes_no_effect_within_athletes() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Int[0, 6]).Sample((hours, athlete) =>
        {
            var plain = CovariateModel.Fit(LoadedSquad.Seven, LoadedSquad.SevenDays, All).GetOrThrow();
            var moved = CovariateModel.Fit(LoadedSquad.Seven, [.. LoadedSquad.SevenDays.Select(day => day.AthleteId == $"s{athlete}" ? day with { SleepHours = day.SleepHours + hours } : day)], All).GetOrThrow();
            ReferenceData.AssertClose(plain[Circumstance.Sleep].Within.GetOrThrow().Value, moved[Circumstance.Sleep].Within.GetOrThrow().Value, 1e-4);
            ReferenceData.AssertClose(plain[Circumstance.Sparring].Within.GetOrThrow().Value, moved[Circumstance.Sparring].Within.GetOrThrow().Value, 1e-4);
        }, iter: 20);
}
