using SquadAnalytics.Change;
using SquadAnalytics.Reporting.Tests.Figures;

namespace SquadAnalytics.Reporting.Tests;

public class SeasonTablesTests
{
    private static readonly double[][] Totals =
    [
        [329.0, 325.2, 327.1, 322.9], [298.4, 301.0, 296.2, 294.8], [356.1, 349.5, 352.0, 345.3], [312.7, 309.9, 313.5, 306.4],
        [341.0, 344.6, 337.2, 338.8], [285.3, 283.1, 286.0, 281.7], [367.9, 358.8, 361.4, 355.0], [320.5, 322.0, 315.9, 317.3],
    ];

    private static readonly Squad Eight = new(
        "Eight (invented)",
        [.. Totals.Select((_, i) => new Athlete($"b{i + 1}", $"Boxer {i + 1}", $"B{i + 1}") { Groups = i == 0 ? [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] : [] })],
        [Examples.Protocol],
        [.. Totals.SelectMany((row, i) => row.Select((total, week) => Session.FromTimes($"s{i}-{week}", $"b{i + 1}", new DateOnly(2031, 1, 7).AddDays(7 * week), Examples.Protocol, [.. Enumerable.Repeat(total / 5, 5)])))]);

    private static SquadTrendResult Season => SquadTrend.Fit(Eight.Sessions, new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();

    [Fact]
    public void The_season_of_the_squad_shows_its_trend_beside_the_plain_one_and_says_what_was_not_estimable()
    {
        // R 4.2.2, lme4: lmer(y ~ w + (1 | a)) gives -1.88625 (SE 0.40007); t.test of the own slopes -2.507521 to -1.264979, p 0.0006969; residual SD 2.5303.
        var table = Tables.SquadTrend(Season, new NumberFormat(1));
        Assert.Equal("The squad's season: 8 athletes, 32 tests over 3 weeks", table.Caption);
        Assert.Equal("−1.89 s/week", table.Rows[0][1].Text);
        Assert.Equal(["−1.89 s/week", "−2.51 to −1.26 s/week", "7", "< .001"], table.Rows[2].Skip(1).Select(cell => cell.Text));
        Assert.Equal("2.53 s", table.Rows[4][1].Text);
        Assert.True(table.Rows[6][1].IsRefusal);
        Assert.Contains("The model that was used: athletes differ in level, with one slope for all.", table.Notes);
    }

    [Fact]
    public void Athletes_stand_in_the_order_of_the_squad_and_juniors_by_code()
    {
        var table = Tables.AthleteTrends(Season, Eight, new NumberFormat(1));
        Assert.Equal(["B1", "Boxer 2", "Boxer 3", "Boxer 4", "Boxer 5", "Boxer 6", "Boxer 7", "Boxer 8"], table.Rows.Select(row => row[0].Text));
        // R 4.2.2, lme4: coef(m) of the first athlete 326.1791530; fewer than 5 tests show no slope of their own.
        Assert.Equal("326.2", table.Rows[0][2].Text);
        Assert.Equal("not estimable: needs 5 tests of different dates, has 4 tests of different dates", table.Rows[0][6].Text);
    }

    [Fact]
    public void The_spread_of_responses_is_shown_with_its_sign_and_its_reading()
    {
        // R 4.2.2: -sqrt(abs(2.5^2 - 2.9^2)) = -1.47.
        BeforeAndAfter[] Group(string name, double deviation) =>
            [.. new double[] { -3, -2, -2, -1, 1, 2, 2, 3 }.Select((step, i) => new BeforeAndAfter($"{name}{i}", name, new Seconds(300), new Seconds(296 + deviation * step / Math.Sqrt(36.0 / 7))))];
        var table = Tables.Responses(ResponseSpread.Fit([.. Group("a", 2.5), .. Group("b", 2.9)], "b").GetOrThrow(), new NumberFormat(1));
        Assert.Equal("−1.5 s", table.Rows[0][1].Text);
        Assert.Contains(table.Notes, note => note.Contains("no evidence that athletes respond differently", StringComparison.Ordinal));
    }
}
