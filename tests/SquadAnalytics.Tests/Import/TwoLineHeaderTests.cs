using SquadAnalytics.Import;
using SquadAnalytics.SampleSquad;
using static SquadAnalytics.SampleSquad.WorkbookCell;
using static SquadAnalytics.Tests.Import.ImportTexts;

namespace SquadAnalytics.Tests.Import;

public sealed class TwoLineHeaderTests
{
    private static readonly Protocol Stations = new("st", "Station circuit", [new Station("burpees", 8), new Station("squats", 12)], 2, new Seconds(120));

    private static ImportOptions WithStations { get; } = new() { Squad = new Squad("x", Known.Squad!.Athletes, [Stations], []), Protocol = "st", Date = Date };

    [Theory]
    [InlineData("Name,Set 1,,Set 2,\n,burpees,squats,burpees,squats\n")]
    [InlineData(",Set 1,,Set 2,\nName,burpees,squats,burpees,squats\n")]
    [InlineData("Name,Set 1,,Set 2,\n,S1,S2,S1,S2\n")]
    [InlineData("Name,Set 1,,Set 2,\nName,1,2,1,2\n")]
    [InlineData("Tuesday evening\n\nName,Round 1,,Round 2,\n,St 1,St 2,St 1,St 2\n")]
    public void Sets_above_their_stations_are_understood(string header)
    {
        var result = Read(header + "BL,20.1,40.2,21.1,41.2\nZB,22.1,42.2,23.1,43.2\n", WithStations);
        Assert.Equal("", string.Join("\n", result.Report.Refused.SelectMany(row => row.Problems).Select(problem => problem.ToString()).Concat(result.Decisions.Select(decision => decision.Text))));
        Assert.Equal((2, 2), (result.Report.Rows, result.NewSessions.Count));
        Assert.Equal([20.1, 40.2, 21.1, 41.2], result.NewSessions[0].Stations.OrderBy(time => time.Set).ThenBy(time => time.Station).Select(time => time.Work!.Value.Value));
    }

    [Theory]
    [InlineData("Name,Set,,,\n,1,2,3,4\n")]
    [InlineData(",Set,,,\nName,1,2,3,4\n")]
    [InlineData("Name,Set 1,Set 2,Set 3,Set 4\n,s,s,(s),[sec]\n")]
    [InlineData("Name,Set 1,Set 2,Set 3,Set 4\n,mm:ss,mm:ss,mm:ss,mm:ss\n")]
    [InlineData("Name,Work time,,,\nName,Set 1,Set 2,Set 3,Set 4\n")]
    public void A_word_above_numbers_and_a_line_of_units_are_headers(string header)
    {
        var result = Read(header + "BL,62.4,63.1,64,69.2\n", Known with { Protocol = "quay-v1", Date = Date });
        Assert.Equal("1 row read: 1 kept, 0 refused, 0 awaiting a decision.", result.Report.ToString());
        Assert.Equal([62.4, 63.1, 64, 69.2], Times(result.NewSessions[0]));
    }

    [Theory]
    [InlineData("Name,Set 1,Set 2,Set 3,Set 4\nBL,62.4,63.1,64,69.2\n", 1)]
    [InlineData("Name,Set 1,Set 2,Set 3,Set 4\nBL,62,63,64,69\nZB,62,63,64,69\n", 2)]
    [InlineData("Name,Set 1,Set 2,Set 3,Set 4\nBL,DNS,,,\n", 1)]
    [InlineData("Name,Set 1,Set 2,Set 3,Set 4\nBL,,,,\n", 1)]
    [InlineData("Name,Set 1,Set 2,Set 3,Set 4\nBL,sick,sick,,\n", 1)]
    [InlineData("Quay circuit,,4 March 2031,,\nName,Set 1,Set 2,Set 3,Set 4\nBL,62,63,64,69\n", 1)]
    public void A_row_below_one_line_of_headers_stays_a_row(string text, int rows) => Assert.Equal(rows, Read(text, Known with { Protocol = "quay-v1", Date = Date }).Report.Rows);

    [Fact]
    public void A_problem_below_two_lines_of_headers_names_both()
    {
        var problem = Assert.Single(Assert.Single(Read("Name,Set 1,,Set 2,\n,burpees,squats,burpees,squats\nBL,20.1,x,21.1,41.2\n", WithStations).Report.Refused).Problems);
        Assert.Equal(("Set 1 squats", 3, 3L, "x"), (problem.Column, problem.ColumnNumber, problem.Line, problem.Text));
    }

    [Fact]
    public void Merged_headers_and_names_merged_over_several_rows_are_read_as_a_person_reads_them()
    {
        IReadOnlyList<WorkbookCell> upper = [Shared("Name"), Shared("Date"), Shared("Set"), Blank, Blank, Blank], lower = [Blank, Blank, Of(1), Of(2), Of(3), Of(4)];
        var sheet = new WorkbookSheet("Tests", [[Shared("Quay circuit")], upper, lower, [Shared("BL"), Of(Date), Of(62.4), Of(63), Of(64), Of(65)], [Blank, Of(Date.AddDays(7)), Of(61), Of(62), Of(63), Of(64)], [Shared("ZB"), Of(Date), Of(71), Of(72), Of(73), Of(74)]])
        {
            Merged = ["A1:F1", "A2:A3", "B2:B3", "C2:F2", "A4:A5"],
        };
        var result = Sheet(sheet);
        Assert.Equal("3 rows read: 3 kept, 0 refused, 0 awaiting a decision.", result.Report.ToString());
        Assert.Equal([("a1", Date), ("a1", Date.AddDays(7)), ("a2", Date)], result.NewSessions.Select(session => (session.AthleteId, session.Date)).OrderBy(entry => entry.AthleteId).ThenBy(entry => entry.Date));
    }

    [Fact]
    public void A_time_merged_over_two_athletes_is_nobody_s_for_certain()
    {
        IReadOnlyList<WorkbookCell> header = [Shared("Name"), Shared("Set 1"), Shared("Set 2"), Shared("Set 3"), Shared("Set 4")];
        var sheet = new WorkbookSheet("4 March 2031", [header, [Shared("BL"), Of(62), Of(63), Of(64), Of(65)], [Shared("ZB"), Of(72), Blank, Of(74), Of(75)]]) { Merged = ["C2:C3"] };
        var result = Sheet(sheet);
        var problem = Assert.Single(Assert.Single(result.Report.Refused).Problems);
        Assert.Equal(("Set 2", 3L), (problem.Column, problem.Line));
        Assert.Contains("merged with one above", problem.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("A1:ZZZZZZZZZ99999999999999")]
    [InlineData("A2")]
    [InlineData(":")]
    [InlineData("A3:A1")]
    [InlineData("A2:A1048576")]
    [InlineData("A0:A0")]
    public void A_merge_that_makes_no_sense_changes_nothing(string range)
    {
        IReadOnlyList<WorkbookCell> header = [Shared("Name"), Shared("Set 1"), Shared("Set 2"), Shared("Set 3"), Shared("Set 4")];
        var result = Sheet(new WorkbookSheet("4 March 2031", [header, [Shared("BL"), Of(62), Of(63), Of(64), Of(65)]]) { Merged = [range] });
        Assert.Equal(1, result.Report.Kept);
    }

    private static ImportResult Sheet(WorkbookSheet sheet) => ClipboardImport.Read(ImportSource.FromBytes("clip.xlsx", WorkbookWriter.Write([sheet])), Known with { Protocol = "quay-v1" });
}
