using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reliability;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Reporting.Tests.Figures;
using SquadAnalytics.Sets;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Reporting.Tests;

/// <summary>A table over a group says over how many athletes it is, counted by hand in what it was made from; an export goes by that.</summary>
public class OverAthletesTests
{
    private static readonly SelectionOptions Everything = SelectionOptions.KeepAll;
    private static readonly NumberFormat Tenths = new(1);
    private static readonly NotEstimable None = new("the rest", Refusal.TooFewSessions, 4, 3, "sessions");

    private static readonly Session[] OfThree = [.. Tests(3)];
    private static readonly Session[] OfSix = [.. Tests(6)];

    private static IEnumerable<Session> Tests(int athletes) =>
        Enumerable.Range(0, athletes).SelectMany(i => Enumerable.Range(0, 5).Select(week => Session.FromTimes($"{i}-{week}", $"a{i}", new DateOnly(2031, 1, 6).AddDays(7 * week), Examples.Protocol, [.. Enumerable.Repeat(60 + i + (0.1 * (((3 * i) + (5 * week)) % 7)), 5)])));

    private static DayContext[] Nights(IEnumerable<Session> tests) => [.. tests.Select((test, k) => new DayContext(test.AthleteId, test.Date) { SleepHours = 6 + (k % 3), SparringRoundsBefore = 2 })];

    private static DayContext[] Loads(IEnumerable<Session> tests) =>
        [.. tests.SelectMany((test, k) => Enumerable.Range(1, 7).Select(back => new DayContext(test.AthleteId, test.Date.AddDays(-back)) { SessionRpe = 1 + (k % 4), Minutes = 60 }))];

    private static Table Made(string name) => name switch
    {
        nameof(Tables.SquadTrend) => Tables.SquadTrend(SquadTrend.Fit(OfSix, new SquadTrendOptions { Selection = Everything }).GetOrThrow(), Tenths),
        nameof(Tables.Reliability) => Tables.Reliability(None, IntraclassCorrelation.Fit(OfSix, new IntraclassCorrelationOptions { Selection = Everything }), SmallestWorthwhileChange.Entered(new Seconds(3)), Tenths),
        nameof(Tables.Covariates) => Tables.Covariates(CovariateModel.Fit(OfSix, Nights(OfSix), new CovariateModelOptions { Selection = Everything }).GetOrThrow(), Tenths),
        nameof(Tables.LoadAssociation) => Tables.LoadAssociation(LoadAssociation.Fit(OfThree, Loads(OfThree), new LoadAssociationOptions { Selection = Everything }).GetOrThrow(), Tenths),
        nameof(Tables.BlockDifference) => Tables.BlockDifference(TwoBlocks.Comparison(TwoBlocks.Power), None, None, Tenths),
        _ => Tables.TestDay(TestDay.Summarize(new Squad("x", [.. Enumerable.Range(0, 6).Select(i => new Athlete($"a{i}", $"Boxer {i}", $"B{i}"))], [Examples.Protocol], OfSix), Examples.Protocol, OfSix[^1].Date)),
    };

    [Theory]
    [InlineData(nameof(Tables.SquadTrend), 6)]
    [InlineData(nameof(Tables.Reliability), 6)]
    [InlineData(nameof(Tables.Covariates), 6)]
    [InlineData(nameof(Tables.LoadAssociation), 3)]
    [InlineData(nameof(Tables.BlockDifference), 7)]
    [InlineData(nameof(Tables.TestDay), 6)]
    public void A_table_is_withheld_below_its_own_number_of_athletes_and_shown_from_there(string name, int athletes)
    {
        var table = Made(name);
        var discretion = Discretion.Of(new Squad("x", [], [], []), [], new DateOnly(2031, 3, 4));
        IEnumerable<string> Figures(int threshold) => SharedForms.Of(table, discretion, threshold)!.Rows.SelectMany(row => row.Skip(1)).Select(cell => cell.Text);
        Assert.All(Figures(athletes + 1), figure => Assert.Equal(SharedForms.SmallGroup, figure));
        Assert.DoesNotContain(SharedForms.SmallGroup, Figures(athletes));
    }
}
