using SquadAnalytics.Import;
using static SquadAnalytics.Tests.Import.ImportTexts;

namespace SquadAnalytics.Tests.Import;

public sealed class RefusalTests
{
    private const string Header = "Athlete;Date;Protocol;Set 1;Set 2;Set 3;Set 4;Total\n";

    [Fact]
    public void Every_bad_cell_of_a_row_is_named_with_place_text_reason_and_what_would_be_accepted()
    {
        var result = Read(Header + "BL;2031-03-04;quay-v1;1:72;62s4;64;-69;\n", Known);
        var row = Assert.Single(result.Report.Refused);
        Assert.Equal(["Set 1", "Set 2", "Set 4"], row.Problems.Select(problem => problem.Column));
        Assert.Equal([4, 5, 7], row.Problems.Select(problem => problem.ColumnNumber));
        Assert.Equal(["1:72", "62s4", "-69"], row.Problems.Select(problem => problem.Text));
        Assert.All(row.Problems, problem => Assert.Equal(("clip.csv", 2L, TimeEntry.Accepted), (problem.File, problem.Line, problem.Accepts)));
        Assert.Equal(["BL", "2031-03-04", "quay-v1", "1:72", "62s4", "64", "-69", ""], row.Cells.Select(cell => cell.Text));
        Assert.Empty(result.NewSessions);
    }

    [Theory]
    [InlineData("62.4;63.1;64;69.2;258.7", true)]
    [InlineData("62.4;63.1;64;69.2;4:18.7", true)]
    [InlineData("62.4;63.1;64;69.2;259", true)] // the total in whole seconds
    [InlineData("62.4;63.1;64;69.2;", true)]
    [InlineData("62.4;63.1;64;69.2;268.7", false)]
    [InlineData("62.4;63.1;;69.2;258.7", false)]
    [InlineData("62.4;63.1;64;69.2;DNF", false)]
    [InlineData("62.4;63.1;64;;DNF", true)]
    [InlineData(";;;;DNS", true)]
    [InlineData("62.4;;;;DNS", false)]
    public void The_total_is_checked_against_the_sets(string times, bool isKept) =>
        Assert.Equal(isKept ? 1 : 0, Read(Header + $"BL;2031-03-04;quay-v1;{times}\n", Known).Report.Kept);

    [Theory]
    [InlineData("1.02", "1.02 s, or 1:02?")]
    [InlineData("1.2", "1.2 s, or 1:20?")]
    [InlineData("361", "more than three start intervals")]
    public void Implausible_times_are_refused_and_never_corrected(string time, string reason)
    {
        var row = Assert.Single(Read(Header + $"BL;2031-03-04;quay-v1;{time};63;64;69;\n", Known).Report.Refused);
        Assert.Contains(reason, row.Problems[0].Reason, StringComparison.Ordinal);
        Assert.Equal(time, row.Problems[0].Text);
    }

    [Fact]
    public void A_column_of_minutes_typed_as_decimals_is_pointed_out() =>
        Assert.Contains(Read("Name;Date;Set 1;Set 2\nAda;2031-03-04;1.02;1.05\nBen;2031-03-04;1.1;1.12\n").Report.Notes, note => note.Contains("'Set 1' has a median of 1.06 s", StringComparison.Ordinal));

    [Fact]
    public void Odd_times_are_kept_with_a_warning()
    {
        var banded = new Protocol("quay-v2", "Quay two", [], 4, new Seconds(120)) { Bands = [new PerformanceBand("quick", new Seconds(240), new Seconds(280))] };
        var earlier = new[] { 62.0, 62.4, 61.8, 62.1, 62.6, 61.9 }.Select((time, week) => Session.FromTimes($"s{week}", "a1", Date.AddDays(-7 * (week + 1)), banded, time, 63, 64, 65));
        var options = new ImportOptions { Squad = new Squad("Quay", [Bo], [banded], [.. earlier]) };
        var result = Read("Name;Date;Set 1;Set 2;Set 3;Set 4\nBL;2031-03-04;80;29;64;65\n", options);
        Assert.Equal(1, result.Report.Kept);
        Assert.Equal(["Set 1", "Set 2"], result.Report.Warnings.Select(warning => warning.Column));
        Assert.Contains("usual 62", result.Report.Warnings[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_test_after_a_head_knock_or_outside_the_squad_is_kept_with_a_warning()
    {
        var knock = new AthleteEvent("e1", "a1", new DateOnly(2031, 3, 1), EventKind.HeadKnock);
        var squad = new Squad("Quay", [Bo, Zoe with { Left = new DateOnly(2031, 1, 31) }], [Quay], []) { Events = [knock] };
        var result = Read("Name;Date;1;2;3;4\nBL;2031-03-04;62;63;64;65\nZB;2031-03-04;70;71;72;73\n", new ImportOptions { Squad = squad });
        Assert.Equal(2, result.Report.Kept);
        Assert.Collection(
            result.Report.Warnings,
            warning => Assert.Contains("not cleared", warning.Text, StringComparison.Ordinal),
            warning => Assert.Contains("not in the squad", warning.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_time_beyond_the_protocols_sets_or_beyond_the_headers_is_refused()
    {
        Assert.Contains("has 4 sets", Assert.Single(Read("Name;Date;Protocol;1;2;3;4;5\nBL;2031-03-04;quay-v1;62;63;64;65;66\n", Known).Report.Refused).Problems[0].Reason, StringComparison.Ordinal);
        Assert.Contains("beyond the last column", Assert.Single(Read("Name;Date;Protocol;1;2\nBL;2031-03-04;quay-v1;62;63;64\n", Known).Report.Refused).Problems[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Stations_that_take_longer_than_their_set_are_refused()
    {
        var result = Read("Name;Date;Protocol;Set 1;S1 burpees;S1 squats;S1 planks\nBL;2031-03-04;quay-v1;50;22.1;18.2;20.1\n", Known);
        Assert.Contains("add up to 60.4 s", Assert.Single(result.Report.Refused).Problems[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void One_refused_row_of_a_long_test_leaves_the_others()
    {
        var result = Read("athlete,date,protocol,set,seconds\nBL,2031-03-04,quay-v1,1,62\nBL,2031-03-04,quay-v1,two,63\nBL,2031-03-04,quay-v1,3,64\n", Known);
        Assert.Equal((2, 1), (result.Report.Kept, result.Report.RefusedRows));
        Assert.Equal([62, null, 64, null], Times(Assert.Single(result.NewSessions)));
    }

    [Fact]
    public void A_file_that_is_no_text_counts_as_one_refused_row()
    {
        var result = ClipboardImport.Read([ImportSource.FromBytes("photo.jpg", new byte[] { 0xFF, 0xD8, 0, 1, 2, 0, 0, 3 }), ImportSource.FromFile("/nowhere/at/all.csv")]);
        AssertAccounted(result);
        Assert.Equal((2, 2), (result.Report.Rows, result.Report.RefusedRows));
    }
}
