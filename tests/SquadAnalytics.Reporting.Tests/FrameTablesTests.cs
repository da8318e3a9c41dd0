using SquadAnalytics.Frames;
using SquadAnalytics.Reliability;
using SquadAnalytics.Reporting.Tests.Figures;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Tests;

public sealed class FrameTablesTests
{
    [Fact]
    public void A_frame_becomes_an_accessible_table_with_its_figures_to_the_right()
    {
        var frame = new Frame(FrameColumn.OfTexts("code", ["A<1", "B2"]), FrameColumn.OfNumbers("total_s", [321.45, null]), FrameColumn.OfIntegers("tests", [12, 7])) { Title = "Best totals" };
        var html = Tables.Of(frame).ToHtml();
        Assert.Contains("<caption>Best totals</caption>", html, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"col\" class=\"number\">total_s</th>", html, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"row\">A&lt;1</th><td class=\"number\">321.45</td><td class=\"number\">12</td>", html, StringComparison.Ordinal);
        Assert.Equal("code,total_s,tests\nA<1,321.45,12\nB2,,7\n", Tables.Of(frame).ToCsv().ReplaceLineEndings("\n"));
    }

    [Fact]
    public void A_long_frame_is_cut_and_says_how_many_rows_there_are()
    {
        var table = Tables.Of(new Frame(FrameColumn.OfNumbers("x", Enumerable.Range(0, 1234).Select(number => (double?)(number / 3.0)))));
        Assert.Equal(60, table.Rows.Count);
        Assert.Equal("1234 rows", table.Caption);
        Assert.Equal(["The first 60 of 1234 rows."], table.Notes);
        Assert.Equal("0.33", table.Rows[1][0].Text);
        Assert.Equal(["No row fits."], Tables.Of(new Frame(FrameColumn.OfTexts("x", []))).Notes);
        Assert.Equal("Nothing", Tables.Of(new Frame()).Caption);
    }

    [Theory]
    [InlineData(0, 62.0, 70.0)]
    [InlineData(1, 62.4, 70.0)]
    [InlineData(2, 62.456, 70.0)]
    [InlineData(4, 0.12345, 0.5)]
    public void Figures_have_as_many_decimals_as_they_need_and_a_reader_can_use(int decimals, double first, double second) => Assert.Equal(decimals, Tables.DecimalsOf([first, second]));

    [Fact]
    public void A_result_without_a_table_of_its_own_becomes_one_row_per_estimate_with_its_refusals()
    {
        var profile = SetProfile.Summarize(new Session("s", "a", new DateOnly(2031, 3, 4), Examples.Protocol, [new SetTime(1, new Seconds(62.4))])).GetOrThrow();
        Assert.True(ResultTables.Knows(typeof(SetProfileResult)));
        var table = ResultTables.Of(profile);
        Assert.Equal("Set profile", table.Caption);
        Assert.Equal(["Total", "Mean", "Best", "Worst", "Range", "Standard deviation", "Coefficient of variation"], table.Rows.Select(row => row[0].Text));
        Assert.True(table.Rows[0][1].IsRefusal);
        Assert.Equal(62.4, table.Rows[1][1].Number);
        Assert.Equal("mean of the completed sets", table.Rows[1][4].Text);
        Assert.Contains("1 of 5 sets.", table.Notes);
    }

    [Fact]
    public void A_result_that_has_a_table_of_its_own_becomes_that()
    {
        var shares = Examples.Shares();
        Assert.Equal(Tables.Stations(shares, new NumberFormat(1)).ToHtml(), ResultTables.Of(shares).ToHtml());
        Assert.False(ResultTables.Knows(typeof(Seconds)));
        Assert.False(ResultTables.Knows(typeof(Estimate)));
        Assert.Throws<ArgumentException>(() => ResultTables.Of(new Seconds(1)));
        Assert.True(ResultTables.Knows(typeof(TypicalErrorResult)));
    }
}
