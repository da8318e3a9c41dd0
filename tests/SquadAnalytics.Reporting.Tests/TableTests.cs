using System.Xml.Linq;

namespace SquadAnalytics.Reporting.Tests;

public class TableTests
{
    private static readonly Table Totals = new(
        "Session totals",
        [new("athlete"), TableColumn.Figures("total", "s"), TableColumn.Figures("change", "s")],
        [
            ["B7", TableCell.Figure(355.04, 1), TableCell.SignedFigure(-12.9, 1)],
            ["B8", TableCell.Refused(new NotEstimable("the session total", Refusal.IncompleteSession, 5, 4, "timed sets")), TableCell.Nothing],
        ])
    {
        Notes = ["90 % intervals."],
    };

    [Fact]
    public void Html_has_caption_scopes_and_right_aligned_figures()
    {
        var table = XElement.Parse(Totals.ToHtml());
        Assert.Equal("Session totals", table.Descendants("caption").Single().Value);
        Assert.Equal(["athlete", "total (s)", "change (s)"], table.Descendants("thead").Descendants("th").Select(cell => cell.Value));
        Assert.All(table.Descendants("thead").Descendants("th"), cell => Assert.Equal("col", (string?)cell.Attribute("scope")));
        Assert.Equal(["B7", "B8"], table.Descendants("tbody").Descendants("th").Where(cell => (string?)cell.Attribute("scope") == "row").Select(cell => cell.Value));
        Assert.All(table.Descendants("tbody").Elements("tr").First().Elements("td"), cell => Assert.Equal("number", (string?)cell.Attribute("class")));
    }

    [Fact]
    public void A_refusal_stands_in_its_row()
    {
        var cell = XElement.Parse(Totals.ToHtml()).Descendants("td").Single(td => ((string?)td.Attribute("class"))?.StartsWith("refusal", StringComparison.Ordinal) == true);
        Assert.Equal("not estimable: needs 5 timed sets, has 4 timed sets", cell.Value);
    }

    [Fact]
    public void Csv_holds_the_full_number_and_leaves_missing_cells_empty() => Assert.Equal(
        "athlete,total (s),change (s)\r\nB7,355.04,-12.9\r\nB8,\"not estimable: needs 5 timed sets, has 4 timed sets\",\r\n", Totals.ToCsv());

    [Fact]
    public void Text_lines_up() => Assert.Equal(
        "Session totals\n" +
        "athlete                                            total (s)  change (s)\n" +
        "-------  ---------------------------------------------------  ----------\n" +
        "B7                                                     355.0       −12.9\n" +
        "B8       not estimable: needs 5 timed sets, has 4 timed sets           –\n" +
        "Note: 90 % intervals.\n",
        Totals.ToText());

    [Theory]
    [InlineData("=HYPERLINK(\"http://x\")")]
    [InlineData("+1+cmd|' /C calc'!A0")]
    [InlineData("-2+3")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData("  =1")]
    [InlineData("＝1")]
    public void Text_that_a_spreadsheet_would_run_is_quoted_out(string hostile)
    {
        var line = new Table("t", [new("name")], [[hostile]]).ToCsv().Split("\r\n")[1];
        Assert.StartsWith("'", line.TrimStart('"'), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\" onmouseover=\"x")]
    [InlineData("a & b < c")]
    [InlineData("\u0001\u009F")]
    public void Text_from_data_is_never_markup(string hostile)
    {
        var html = new Table(hostile, [new(hostile)], [[hostile]]) { Notes = [hostile] }.ToHtml();
        var table = XElement.Parse(html);
        var shown = string.Concat(hostile.Select(letter => char.IsControl(letter) ? '\uFFFD' : letter));
        Assert.Equal(shown, table.Descendants("caption").Single().Value);
        Assert.Equal(shown, table.Descendants("th").First().Value);
        Assert.Empty(table.Descendants("script"));
        Assert.DoesNotContain(table.DescendantsAndSelf().Attributes(), attribute => attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
    }

    [Fact]
    public void A_row_of_another_length_is_refused()
    {
        var error = Assert.Throws<ArgumentException>(() => new Table("t", [new("a"), new("b")], [["1"]]));
        Assert.Contains("Row 1 of table 't' has 1 cells, but there are 2 columns.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_is_never_a_nan() => Assert.Throws<ArgumentOutOfRangeException>(() => TableCell.Figure(double.NaN, 1));
}
