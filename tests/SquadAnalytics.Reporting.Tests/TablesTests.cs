using SquadAnalytics.Import;
using SquadAnalytics.Reporting.Tests.Figures;

namespace SquadAnalytics.Reporting.Tests;

public class TablesTests
{
    [Fact]
    public void Stations_add_up_to_the_whole_set()
    {
        // By hand from the four sessions' means: 3.2 + 0.7 + 1.025 + 0.6 + 0.275 = 5.8 s.
        var table = Tables.Stations(Examples.Shares(), new NumberFormat(1));
        var changes = table.Rows.Select(row => row[3].Number!.Value).ToList();
        Assert.Equal([3.2, 0.7, 1.025, 0.6, 0.275, 5.8], changes.Select(change => Math.Round(change, 9)));
        Assert.Equal("2.78 to 3.62", table.Rows[0][4].Text);
    }

    [Fact]
    public void Rest_is_listed_set_by_set()
    {
        // By hand: T = 120 s; 120 - 110 = 10 s of rest; set 2 ends at 245 s, 5 s into set 3, which starts late.
        var table = Tables.Rest(Examples.Clock(110, 125, 130));
        Assert.Equal(["110.0", "10.0", "0.0", "0.0"], table.Rows[0].Skip(1).Select(cell => cell.Text));
        Assert.Equal(["130.0", "–", "–", "5.0"], table.Rows[2].Skip(1).Select(cell => cell.Text));
    }

    [Fact]
    public void A_session_that_lacks_a_set_says_so_instead_of_a_total()
    {
        var session = new Session("x", "a", new DateOnly(2031, 3, 4), Examples.Protocol, [new SetTime(1, new Seconds(62.4)), new SetTime(2, SetStatus.NotFinished)]);
        var row = Tables.SetTimes("Sessions", [session]).Rows[0];
        Assert.Equal(["4 Mar 2031", "62.4", "not finished", "–", "–", "–", "not estimable: needs 5 timed sets, has 1 timed sets"], row.Select(cell => cell.Text));
    }

    [Fact]
    public void Changes_show_the_verdict_and_those_without_enough_tests_their_reason()
    {
        var table = Tables.Changes(Examples.Changes(), Examples.Squad(), new NumberFormat(1));
        Assert.Equal("Boxer 9", table.Rows[^1][0].Text);
        Assert.StartsWith("not estimable: needs", table.Rows[^1][1].Text, StringComparison.Ordinal);
        Assert.All(table.Rows.Take(8), row => Assert.Matches(@"^[−+]?\d+\.\d s$", row[1].Text));
        var changes = table.Rows.Take(8).Select(row => row[1].Number!.Value).ToList();
        Assert.Equal(changes.Order(), changes);
    }

    [Fact]
    public void An_import_shows_every_bad_cell_with_its_place()
    {
        var result = ClipboardImport.Read(ImportSource.FromText("friday.csv", "athlete,date,set 1,set 2\nB1,2031-03-07,62.4,1:72\n"));
        var table = Tables.Import(result.Report);
        Assert.Contains("1 row read: 0 kept, 1 refused", table.Caption, StringComparison.Ordinal);
        Assert.Contains(table.Rows, row => row[0].Text.Contains("friday.csv, line 2, column 4 set 2", StringComparison.Ordinal) && row[1].Text == "1:72");
    }
}
