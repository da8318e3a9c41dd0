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
        // R 4.2.2: y <- replace(Nile, c(21:40, 61:80), NA); optim() of the diffuse likelihood: 685.8198151, 17899.8449634. Levels: the filter at 400 splits r = sin((i - 0.5) / 400 * pi / 2)^2 of the variance, smoothed by
        // dense matrices, solve(crossprod(diff(diag(100))) / r + diag(!is.na(y)) / (1 - r)); weights r^1.5 (1 - r)^2.5 exp(ll); mean and SD of the weighted t distributions with 59 degrees of freedom.
        var season = SeasonLevel.Fit(Nile(week => week is not (>= 20 and < 40) and not (>= 60 and < 80)), All).GetOrThrow();
        ReferenceData.AssertClose(685.8198151, Math.Pow(season.WeeklyDrift.Value, 2), 1e-4);
        ReferenceData.AssertClose(17899.8449634, Math.Pow(season.Noise.Value, 2), 1e-5);
        Assert.Null(season.Points[29].TotalSeconds);
        AssertLevel(1031.014912506, 69.48863483, season.Points[19].Level);
        AssertLevel(1031.014912506, 173.2991096, season.Points[29].Level);
        AssertLevel(1006.538234905, 67.06051724, season.Points[19].InHindsight);
        AssertLevel(905.268427837, 125.0477596, season.Points[29].InHindsight);
        AssertLevel(789.570737708, 73.52170392, season.Latest);
        Assert.Equal("40 weeks without a test: the level is carried on, its interval widens.", season.Notes[0]);
        Assert.Equal(20, season.Points[29].Level.Observations);
    }

    [Fact]
    public void Limits_count_that_drift_and_noise_are_not_known_apart()
    {
        // R 4.2.2: the same, and uniroot() of sum(w * pt((x - m) / se, 13)) at .05 and .95.
        var season = SeasonLevel.Fit(SeasonData.Weekly(331.2, 330.4, 327.1, 328.0, 327.3, 323.6, 324.5, 322.9, 319.8, 321.2, 320.5, 322.8, 321.9, 319.6), All).GetOrThrow();
        AssertLevel(320.388860304, 1.094154507, season.Latest);
        Assert.Equal(318.6730689, season.Latest.Lower!.Value, 1e-4);
        Assert.Equal(322.2290651, season.Latest.Upper!.Value, 1e-4);
        Assert.Equal(322.5225604, season.Points[6].InHindsight.Lower!.Value, 1e-4);
        Assert.Equal(325.5006168, season.Points[6].InHindsight.Upper!.Value, 1e-4);
    }

    [Fact]
    public void A_best_fit_on_the_edge_is_a_note_and_the_interval_counts_what_the_tests_leave_open()
    {
        // Made so that neighbours alternate: no drift can be seen. R 4.2.2, as above: 302.485661974 (SD 1.335588065), 300.3650401 to 304.7122437.
        var constant = SeasonLevel.Fit(SeasonData.Weekly([.. Enumerable.Range(0, 14).Select(week => week % 2 == 0 ? 300.0 : 304)]), All).GetOrThrow();
        Assert.Equal(0, constant.WeeklyDrift.Value);
        Assert.Contains("A constant level with noise fits best; a drift that the noise hides is possible all the same, and the levels and their intervals count it.", constant.Notes);
        AssertLevel(302.485661974, 1.335588065, constant.Latest);
        Assert.Equal(300.3650401, constant.Latest.Lower!.Value, 1e-4);
        Assert.Equal(304.7122437, constant.Latest.Upper!.Value, 1e-4);

        // Made of long runs in one direction: every step is drift. R: 302.392208678 (SD 0.9332308809), 300.9889411 to 304.0086362.
        var walk = SeasonLevel.Fit(SeasonData.Weekly([.. Enumerable.Range(0, 20).Select(week => 300.0 + (week < 10 ? week : 20 - week) * 2)]), All).GetOrThrow();
        Assert.Equal(0, walk.Noise.Value);
        Assert.Contains("A level that follows every test fits best; noise that the drift hides is possible all the same, and the levels and their intervals count it.", walk.Notes);
        AssertLevel(302.392208678, 0.9332308809, walk.Latest);
        Assert.Equal(300.9889411, walk.Latest.Lower!.Value, 1e-4);
        Assert.Equal(304.0086362, walk.Latest.Upper!.Value, 1e-4);
    }

    [Fact]
    public void Short_seasons_and_seasons_that_do_not_vary_are_refused()
    {
        Assert.Equal("Not enough data for the season's level: needs 12 weeks with an eligible test, has 11 weeks with an eligible test.", SeasonLevel.Fit([.. Nile(_ => true).Take(11)], All).ToString());
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

    private static void AssertLevel(double value, double error, Estimate level)
    {
        // R's grid is finer than ours.
        ReferenceData.AssertClose(value, level.Value, 1e-5);
        ReferenceData.AssertClose(error, level.StandardError!.Value, 1e-4);
    }

    private static IReadOnlyList<Session> Nile(Func<int, bool> tested)
    {
        var flows = ReferenceData.Column("monitoring", "nile_control.csv", "y");
        return SeasonData.Of([.. Enumerable.Range(0, flows.Length).Where(tested)], [.. flows.Where((_, week) => tested(week))]);
    }
}
