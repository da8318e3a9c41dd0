using CsCheck;
using SquadAnalytics.Change;

namespace SquadAnalytics.Tests.Change;

/// <summary>Annual flows of the Nile, a series of published local-level fits, in the place of weekly totals.</summary>
public sealed class SeasonLevelTests
{
    private static readonly SeasonLevelOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void Noise_and_drift_are_those_of_the_published_fit()
    {
        // R 4.2.2: StructTS(Nile, "level"): level 1469.15, epsilon 15098.58 (it starts from a very wide instead of a diffuse level, hence 1e-4).
        var season = SeasonLevel.Fit(Nile(_ => true), All).GetOrThrow();
        ReferenceData.AssertClose(1469.15, Math.Pow(season.WeeklyDrift.Value, 2), 1e-4);
        ReferenceData.AssertClose(15098.58, Math.Pow(season.Noise.Value, 2), 1e-4);
        Assert.Equal(100, season.Points.Count);

        // By hand: q = 1469.15 / 15098.58 = 0.0973039; (-q + √(q² + 4 q)) / 2 = 0.2670.
        Assert.Equal(0.2670, season.SteadyWeight, 1e-4);
    }

    [Fact]
    public void Weeks_without_a_test_carry_the_level_on_and_widen_its_interval()
    {
        // R 4.2.2: y <- replace(Nile, c(21:40, 61:80), NA); optim() of the diffuse likelihood: 685.8198151, 17899.8449634; filter 1033.1971764 in weeks 20 and 30 with SE 56.3949417 and 100.1927522;
        // smoother 995.8207919, 915.2222819.
        var season = SeasonLevel.Fit(Nile(week => week is not (>= 20 and < 40) and not (>= 60 and < 80)), All).GetOrThrow();
        ReferenceData.AssertClose(685.8198151, Math.Pow(season.WeeklyDrift.Value, 2), 1e-4);
        ReferenceData.AssertClose(17899.8449634, Math.Pow(season.Noise.Value, 2), 1e-5);
        Assert.Null(season.Points[29].TotalSeconds);
        ReferenceData.AssertClose(1033.1971764, season.Points[19].Level.Value, 1e-6);
        ReferenceData.AssertClose(56.39494170, season.Points[19].Level.StandardError!.Value, 1e-4);
        ReferenceData.AssertClose(1033.1971764, season.Points[29].Level.Value, 1e-6);
        ReferenceData.AssertClose(100.19275224, season.Points[29].Level.StandardError!.Value, 1e-4);
        ReferenceData.AssertClose(995.8207919, season.Points[19].InHindsight.Value, 1e-6);
        ReferenceData.AssertClose(915.2222819, season.Points[29].InHindsight.Value, 1e-6);
        ReferenceData.AssertClose(829.3832491, season.Latest.Value, 1e-6);
        Assert.Equal("40 weeks without a test: the level is carried on, its interval widens.", season.Notes[0]);
        Assert.Equal(20, season.Points[29].Level.Observations);
    }

    [Fact]
    public void Limits_count_that_drift_and_noise_are_not_known_apart()
    {
        // R 4.2.2: the Kalman filter at 48 splits r = (i - 0.5) / 48 of the variance, w = exp(ll - max(ll)) / sum, and uniroot() of sum(w * pt((x - m) / se, 13)) at .05 and .95.
        var latest = SeasonLevel.Fit(SeasonData.Weekly(331.2, 330.4, 327.1, 328.0, 327.3, 323.6, 324.5, 322.9, 319.8, 321.2, 320.5, 322.8, 321.9, 319.6), All).GetOrThrow().Latest;
        Assert.Equal(318.7425529, latest.Lower!.Value, 1e-5);
        Assert.Equal(321.8145812, latest.Upper!.Value, 1e-5);
    }

    [Fact]
    public void Short_seasons_and_levels_on_the_edge_are_refused()
    {
        Assert.Equal("Not enough data for the season's level: needs 12 weeks with an eligible test, has 11 weeks with an eligible test.", SeasonLevel.Fit([.. Nile(_ => true).Take(11)], All).ToString());

        // Made so that neighbours alternate: no drift can be seen.
        var constant = SeasonLevel.Fit(SeasonData.Weekly([.. Enumerable.Range(0, 14).Select(week => week % 2 == 0 ? 300.0 : 304)]), All);
        Assert.Equal(Refusal.BoundarySolution, constant.Refusal!.Reason);
        Assert.Equal("Not enough data for the season's level: needs a level that drifts by more than the noise explains, has a drift of 0: a constant level with noise fits best.", constant.ToString());

        // Made of long runs in one direction: every step is drift.
        var walk = SeasonLevel.Fit(SeasonData.Weekly([.. Enumerable.Range(0, 20).Select(week => 300.0 + (week < 10 ? week : 20 - week) * 2)]), All);
        Assert.Equal("Not enough data for the season's level: needs tests with noise about the level, has a noise of 0: the level follows every test.", walk.ToString());
        Assert.Equal(Refusal.ZeroVariance, SeasonLevel.Fit(SeasonData.Weekly([.. Enumerable.Repeat(300.0, 14)]), All).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => SeasonLevel.Fit([.. Nile(_ => true), WorkedData.Total(300, 3, "B2")], All));
    }

    [Fact]
    public void A_shift_and_a_scale_carry_over() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[0.5, 2]).Sample((shift, factor) =>
        {
            var nile = Nile(_ => true);
            var (plain, moved, scaled) = (SeasonLevel.Fit(nile, All).GetOrThrow(), SeasonLevel.Fit(SeasonData.Changed(nile, total => total + shift), All).GetOrThrow(), SeasonLevel.Fit(SeasonData.Changed(nile, total => total * factor), All).GetOrThrow());
            ReferenceData.AssertClose(plain.Latest.Value + shift, moved.Latest.Value, 1e-7);
            ReferenceData.AssertClose(plain.WeeklyDrift.Value, moved.WeeklyDrift.Value, 1e-5);
            ReferenceData.AssertClose(factor * plain.Noise.Value, scaled.Noise.Value, 1e-5);
            ReferenceData.AssertClose(plain.SteadyWeight, scaled.SteadyWeight, 1e-5);
        }, iter: 20);

    private static IReadOnlyList<Session> Nile(Func<int, bool> tested)
    {
        var flows = ReferenceData.Column("monitoring", "nile_control.csv", "y");
        return SeasonData.Of([.. Enumerable.Range(0, flows.Length).Where(tested)], [.. flows.Where((_, week) => tested(week))]);
    }
}
