using SquadAnalytics.Load;
using SquadAnalytics.Reporting.Tests.Figures;

namespace SquadAnalytics.Reporting.Tests;

public class LoadTablesTests
{
    private static readonly DateOnly Monday = new(2031, 1, 6);

    private static readonly Session[] Sessions =
    [
        .. new double[][] { [318, 321, 320, 325], [300, 303, 307, 304], [341, 340, 346, 347] }
            .SelectMany((own, i) => own.Select((total, week) => Session.FromTimes($"{i}-{week}", $"a{i}", Monday.AddDays(7 * week), Examples.Protocol, [.. Enumerable.Repeat(total / 5, 5)]))),
    ];

    private static readonly DayContext[] Days =
    [
        .. new double[][] { [2, 4, 3, 6], [1, 3, 5, 4], [5, 4, 7, 8] }
            .SelectMany((own, i) => own.SelectMany((load, week) => Enumerable.Range(1, 7).Select(back => new DayContext($"a{i}", Monday.AddDays(7 * week - back)) { SessionRpe = 1, Minutes = load / 7, SleepHours = 7 }))),
    ];

    [Fact]
    public void Weeks_show_sum_monotony_and_strain_or_what_is_missing()
    {
        // R 4.2.2: l <- c(420, 0, 540, 360, 0, 600, 0); sum(l); mean(l) / sd(l); sum(l) * mean(l) / sd(l): 1920, 1.023422, 1964.969.
        double[] loads = [420, 0, 540, 360, 0, 600, 0];
        DayContext[] days = [.. loads.Select((load, day) => new DayContext("a", Monday.AddDays(day)) { SessionRpe = 1, Minutes = load }), new DayContext("a", Monday.AddDays(9))];
        var table = Tables.WeeklyLoads("A1", WeeklyLoad.Weeks(days));
        Assert.Equal(["6 Jan 2031", "1920", "1.02", "1965"], table.Rows[0].Select(cell => cell.Text));
        Assert.Equal("not estimable: needs 7 confirmed days, has 0 confirmed days", table.Rows[1][1].Text);
        Assert.Contains(table.Notes, note => note.Contains("small samples", StringComparison.Ordinal));
    }

    [Fact]
    public void An_association_shows_its_correlation_and_what_a_hundred_units_go_with()
    {
        // R 4.2.2: lm(y ~ athlete + x): 1.763636 s per unit; r within athletes 0.985903, 90 % 0.951955 to 0.995914.
        var table = Tables.LoadAssociation(LoadAssociation.Fit(Sessions, Days, new LoadAssociationOptions { Form = LoadAssociationForm.AsTheyStand, Selection = SelectionOptions.KeepAll }).GetOrThrow(), new NumberFormat(1));
        Assert.Equal(["load 1 to 7 days before", "+0.986", "0.952 to 0.996", "< .001", "+176.36"], table.Rows[0].Take(5).Select(cell => cell.Text));
        Assert.Equal("Load before the test and session total, as they stand", table.Caption);
    }

    [Fact]
    public void Circumstances_show_their_part_within_athletes_and_refuse_what_does_not_vary()
    {
        Session[] six = [.. Enumerable.Range(0, 6).SelectMany(i => Enumerable.Range(0, 4).Select(week => Session.FromTimes($"{i}-{week}", $"a{i}", Monday.AddDays(7 * week), Examples.Protocol, [.. Enumerable.Repeat(60 + i + 0.1 * ((3 * i + 5 * week) % 7), 5)])))];
        DayContext[] nights = [.. six.Select((test, k) => new DayContext(test.AthleteId, test.Date) { SleepHours = 6 + k % 3, SparringRoundsBefore = 2 })];
        var table = Tables.Covariates(CovariateModel.Fit(six, nights, new CovariateModelOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow(), new NumberFormat(1));
        Assert.Equal(["sleep the night before", "sparring before the test", "trend of the squad"], table.Rows.Select(row => row[0].Text));
        Assert.EndsWith("s/h", table.Rows[0][1].Text, StringComparison.Ordinal);
        Assert.True(table.Rows[1][1].IsRefusal);
        Assert.EndsWith("s/week", table.Rows[2][1].Text, StringComparison.Ordinal);
    }
}
