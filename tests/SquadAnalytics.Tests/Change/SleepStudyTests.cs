using System.Globalization;
using System.Text;
using SquadAnalytics.Change;
using SquadAnalytics.Import;
using SquadAnalytics.Statistics;
using SquadAnalytics.Storage;
using SquadAnalytics.Tests.Storage;

namespace SquadAnalytics.Tests.Change;

/// <summary>
/// The sleepstudy data (18 subjects, 10 days; Belenky et al. 2003, J Sleep Res 12:1-12) as a clipboard file: one test of two sets a week in the place of each day, the reaction time times ten in
/// seconds, because a clipboard has at most three decimals. Expected: R 4.2.2, lme4 1.1-31, lmer(Reaction ~ Days + (Days | Subject)), as in tests/Reference/mixed/sleepstudy.json, times ten.
/// </summary>
public sealed class SleepStudyTests
{
    private const double Factor = 10;
    private static readonly DateOnly DayZero = new(2031, 1, 7);

    [Fact]
    public void Sleepstudy_goes_in_through_the_import_and_comes_out_with_the_published_effects_SDs_and_predictions()
    {
        using var temp = new TempFolder();
        var squad = Imported(temp);
        var season = SquadTrend.Fit(squad.Sessions, new SquadTrendOptions { LevelOn = DayZero, Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var expected = ReferenceData.Values("mixed", "sleepstudy", "correlated_reml");
        Assert.Equal(SquadTrendForm.CorrelatedLevelsAndSlopes, season.Form);
        Assert.Equal(180, season.Slope.Observations);
        Assert.Contains(season.Notes, note => note.StartsWith("Slopes of athletes come from their own lines", StringComparison.Ordinal));

        // Published: Bates et al. (2015), J Stat Softw 67(1): 251.405 (6.825), 10.467 (1.546); SDs 24.740, 5.922, correlation 0.066; residual 25.592.
        Assert.Equal(251.405, season.Level.Value / Factor, 5e-4);
        Assert.Equal(6.825, season.Level.StandardError!.Value / Factor, 5e-4);
        Assert.Equal(10.467, season.Slope.Value / Factor, 5e-4);
        Assert.Equal(1.546, season.Slope.StandardError!.Value / Factor, 5e-4);
        Assert.Equal(24.740, season.LevelSpread.Value / Factor, 1e-3);
        Assert.Equal(5.922, season.SlopeSpread.GetOrThrow().Value / Factor, 5e-4);
        Assert.Equal(0.066, season.Correlation.GetOrThrow().Value, 5e-4);
        Assert.Equal(25.592, season.ResidualStandardDeviation.Value / Factor, 5e-4);

        var satterthwaite = ReferenceData.Results("mixed", "sleepstudy", "correlated_satterthwaite").GetProperty("values")[1];
        ReferenceData.AssertClose(satterthwaite.GetProperty("df").GetDouble(), season.Slope.DegreesOfFreedom!.Value, 1e-3);

        foreach (var row in expected.GetProperty("blups").EnumerateArray())
        {
            var athlete = season.Athlete(squad.Athlete($"Subject {row.GetProperty("grp").GetString()}").Id);
            var deviation = row.GetProperty("term").GetString() == "Days" ? athlete.SlopeDeviation.GetOrThrow() : athlete.LevelDeviation;
            Assert.Equal(row.GetProperty("condval").GetDouble(), deviation.Value / Factor, 25.6e-4);
            ReferenceData.AssertClose(row.GetProperty("condsd").GetDouble(), deviation.StandardError!.Value / Factor, 1e-4);
        }

        // R 4.2.2, lme4: head(coef(m)$Subject, 1); standard error of the level β + u from the inverse of Henderson's equations of that fit.
        var first = season.Athlete(squad.Athlete("Subject 308").Id);
        Assert.Equal(253.6636703, first.Level.Value / Factor, 1e-3);
        Assert.Equal(12.254792616, first.Level.StandardError!.Value / Factor, 1e-3);
        Assert.Equal(19.666257864, (season.Slope.Value + first.SlopeDeviation.GetOrThrow().Value) / Factor, 1e-3);
        Assert.Null(first.SlopeDeviation.GetOrThrow().Interval);

        // R 4.2.2: integrate() over p, from 0 to 1, of t distributions with nu + 15 df, nu = 144, b the 18 least-squares slopes, s^2 = sum(RSS) / nu / 82.5, SS = sum((b - mean(b))^2),
        // B = min(1, 15 s^2 / SS * qf(1 - p, 15, nu)), mean (1 - B) b + B mean(b), scale^2 (nu + B SS / s^2) / (nu + 15) (1 - B + B / 18) s^2; limits by uniroot().
        var slope = first.Slope.GetOrThrow();
        double[] posterior = [19.898877026, 2.701365729, 15.465069702, 24.348617643];
        Assert.Equal(posterior, [slope.Value / Factor, slope.StandardError!.Value / Factor, slope.Lower!.Value / Factor, slope.Upper!.Value / Factor], (wanted, got) => Math.Abs(wanted - got) < 1e-3);
        Assert.Equal(21.764702424, first.OwnSlope.GetOrThrow().Value / Factor, 1e-6);
    }

    [Fact]
    public void Levels_are_read_in_the_middle_of_the_season_unless_asked_otherwise()
    {
        // R 4.2.2, lme4: m <- lmer(Reaction ~ w + (w | Subject)), w = Days - 31/7: level 297.76022838 (8.976900323), SD 37.2154632, correlation 0.7483006743, the slope as before;
        // logarithms: slope 0.03366803586 (0.0047538424); t.test of the 18 own slopes: 7.778221199 to 13.156350721.
        using var temp = new TempFolder();
        var season = SquadTrend.Fit(Imported(temp).Sessions, new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(DayZero.AddDays(31), season.LevelOn);
        Assert.Equal(9, season.SpanWeeks);
        ReferenceData.AssertClose(297.76022838, season.Level.Value / Factor, 1e-6);
        ReferenceData.AssertClose(8.976900323, season.Level.StandardError!.Value / Factor, 1e-4);
        ReferenceData.AssertClose(37.2154632, season.LevelSpread.Value / Factor, 1e-4);
        ReferenceData.AssertClose(0.7483006743, season.Correlation.GetOrThrow().Value, 1e-4);
        ReferenceData.AssertClose(5.9221326256, season.SlopeSpread.GetOrThrow().Value / Factor, 1e-4);
        ReferenceData.AssertClose(100 * (Math.Exp(0.03366803586) - 1), season.RelativeSlope.GetOrThrow().Value, 1e-5);
        ReferenceData.AssertClose(7.778221199, season.MeanOfOwnSlopes.GetOrThrow().Lower!.Value / Factor, 1e-8);
    }

    [Fact]
    public void Kenward_and_Roger_can_be_asked_for()
    {
        using var temp = new TempFolder();
        var season = SquadTrend.Fit(Imported(temp).Sessions, new SquadTrendOptions { LevelOn = DayZero, DegreesOfFreedom = FixedEffectDegreesOfFreedom.KenwardRoger, Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var expected = ReferenceData.Results("mixed", "sleepstudy", "correlated_kenward_roger").GetProperty("values").GetProperty("coefficients")[1];
        ReferenceData.AssertClose(expected.GetProperty("df").GetDouble(), season.Slope.DegreesOfFreedom!.Value, 1e-4);
        ReferenceData.AssertClose(expected.GetProperty("Std. Error").GetDouble(), season.Slope.StandardError!.Value / Factor, 1e-4);
    }

    [Fact]
    public void The_spread_of_responses_over_the_season_has_the_limits_of_R()
    {
        // R 4.2.2: b, S and the pooled variance s2 (nu df) from lm(Reaction ~ Days) of each subject; v <- o^2 + s2 / S; m <- weighted.mean(b, 1 / v);
        // uniroot(function(o) sum((b - m)^2 / v) / 17 - qf(p, 17, nu), c(0, 100)) for p = .95, .05: 4.1771881714, 8.8424119148; times 9 weeks.
        using var temp = new TempFolder();
        var spread = ResponseSpread.OfSeason(SquadTrend.Fit(Imported(temp).Sessions, new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow()).GetOrThrow();
        ReferenceData.AssertClose(9 * 5.9221326256, spread.StandardDeviation.Value / Factor, 1e-4);
        ReferenceData.AssertClose(9 * 4.1771881714, spread.StandardDeviation.Lower!.Value / Factor, 1e-6);
        ReferenceData.AssertClose(9 * 8.8424119148, spread.StandardDeviation.Upper!.Value / Factor, 1e-6);
        Assert.True(spread.IsClear);
        Assert.Contains(spread.Notes, note => note.StartsWith("Without a comparison group", StringComparison.Ordinal));
    }

    /// <summary>The squad of a new logbook after the file was read and accepted.</summary>
    private static Squad Imported(TempFolder temp)
    {
        var data = ReferenceData.Text("mixed", "sleepstudy.csv");
        var text = new StringBuilder("athlete,date,set 1,set 2\n");
        for (var row = 0; row < data["Days"].Length; row++)
        {
            var thousandths = (long)Math.Round(decimal.Parse(data["Reaction"][row], CultureInfo.InvariantCulture) * 10_000);
            var date = DayZero.AddDays(7 * int.Parse(data["Days"][row], CultureInfo.InvariantCulture));
            text.AppendLine(CultureInfo.InvariantCulture, $"Subject {data["Subject"][row]},{date:yyyy-MM-dd},{thousandths / 2 / 1000m:0.000},{(thousandths - thousandths / 2) / 1000m:0.000}");
        }

        var source = ImportSource.FromText("sleepstudy.csv", text.ToString());
        var result = ClipboardImport.Read(source, new ImportOptions { AcceptNewAthletes = true });
        Assert.Equal("180 of 180", $"{result.Report.Kept} of {result.Report.Rows}");
        using var logbook = Logbook.Create(temp.Logbook, "Sleep study");
        logbook.Commit(ImportAcceptance.ChangeOf(result, [source], logbook.HeldRows));
        Assert.Equal((18, 180), (logbook.Squad.Athletes.Count, logbook.Squad.Sessions.Count));
        return logbook.Squad;
    }
}
