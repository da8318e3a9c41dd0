using System.Text;
using System.Xml.Linq;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using DocumentFormat.OpenXml.Validation;
using SquadAnalytics.Import;
using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Reporting.Tests.Documents;

public class RecordingSheetTests
{
    private static readonly DateOnly Day = new(2031, 4, 3);

    private static readonly Protocol Quay = new("quay", "Quay circuit", [new Station("burpees", 8), new Station("squat jumps", 12)], 4, new Seconds(97.5));

    private static readonly Protocol Small = new("quay-small", "Quay circuit, small", [new Station("burpees", 5)], 4, new Seconds(97.5)) { VariantOf = "quay" };

    private static Squad Squad(int seniors = 5) => new(
        "Quay & <Co>",
        [
            .. Enumerable.Range(1, seniors).Select(k => new Athlete($"a{k}", $"Boxer {k:00}", $"B{k}")),
            new Athlete("h1", "Hurt Person", "HP"),
            new Athlete("g1", "Gone Person", "GP") { Left = new DateOnly(2031, 4, 2) },
            new Athlete("j1", "Junior Person", "J1") { Groups = [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] },
            new Athlete("j2", "Second Junior", "J2") { Groups = [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] },
            new Athlete("d1", "Same Name", "S1"), new Athlete("d2", "same name", "S2"),
        ],
        [Quay, Small],
        [Session.FromTimes("t", "j2", new DateOnly(2031, 3, 27), Small, 50, 51, 52, 53)])
    {
        Events = [new AthleteEvent("e", "h1", new DateOnly(2031, 4, 1), EventKind.HeadKnock)],
    };

    private static RecordingSheet Sheet(int seniors = 5, RecordingSheetOptions? options = null) => RecordingSheet.Of(Squad(seniors), Quay, Day, options);

    private static IReadOnlyList<string> Labels(RecordingSheet sheet) => [.. sheet.Heats.SelectMany(heat => heat.Labels)];

    [Fact]
    public void Members_who_do_this_protocol_are_listed_juniors_and_namesakes_by_code()
    {
        Assert.Equal(["Boxer 01", "Boxer 02", "J1", "S1", "S2"], Labels(Sheet(2)));
        Assert.Equal(["J2"], Labels(RecordingSheet.Of(Squad(), Small, Day)));
        Assert.Equal(["B1", "B2", "J1", "S1", "S2"], Labels(Sheet(2, new() { OnlyCodes = true })));
        Assert.Equal(["J1"], Labels(Sheet(2, new() { Group = "Juniors" })));
        Assert.Contains("Gone Person", Labels(RecordingSheet.Of(Squad(), Quay, new DateOnly(2031, 3, 1))));
        Assert.Contains("Groups: juniors", Assert.Throws<ArgumentException>(() => Sheet(2, new() { Group = "nobody" })).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_head_knock_without_clearance_keeps_an_athlete_off_the_sheet_and_the_sheet_does_not_say_who_or_why()
    {
        var sheet = Sheet();
        Assert.Equal(["h1"], sheet.NotCleared.Select(athlete => athlete.Id));
        var words = SharedForms.Words(sheet.ToHtml()[sheet.ToHtml().IndexOf("<main>", StringComparison.Ordinal)..sheet.ToHtml().IndexOf("</body>", StringComparison.Ordinal)].Replace("main>", "div>", StringComparison.Ordinal));
        var everything = sheet.ToHtml() + words + Encoding.UTF8.GetString(sheet.ToCsv()) + Cells(sheet.ToWorkbook());
        foreach (var secret in (string[])["Hurt Person", ">HP<", "2031-04-01"]) Assert.DoesNotContain(secret, everything, StringComparison.Ordinal);
        Assert.Contains("not everybody is on this sheet today (1\u00A0athlete)", everything.Replace("1 athlete)", "1\u00A0athlete)", StringComparison.Ordinal), StringComparison.Ordinal);
        var cleared = Squad() with { Events = [new AthleteEvent("e", "h1", new DateOnly(2031, 4, 1), EventKind.HeadKnock) { ClearedOn = new DateOnly(2031, 4, 3) }] };
        Assert.Contains("Hurt Person", Labels(RecordingSheet.Of(cleared, Quay, Day)));
        Assert.DoesNotContain("not everybody is on this sheet", RecordingSheet.Of(cleared, Quay, Day).ToHtml(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5, 12, new[] { 8 })]
    [InlineData(9, 12, new[] { 12 })]
    [InlineData(10, 12, new[] { 6, 7 })]
    [InlineData(20, 8, new[] { 7, 8, 8 })]
    [InlineData(0, 1, new[] { 1, 1, 1 })]
    public void A_squad_too_large_for_one_heat_is_split_evenly(int seniors, int size, int[] heats) =>
        Assert.Equal(heats, Sheet(seniors, new() { HeatSize = size }).Heats.Select(heat => heat.Labels.Count));

    [Fact]
    public void Each_set_says_when_it_starts_on_the_rolling_clock()
    {
        // By hand: a start every 97.5 s.
        Assert.Equal([0, 97.5, 195, 292.5], Sheet().Starts.Select(start => start.Value));
        var html = Sheet().ToHtml();
        foreach (var start in (string[])["start 0:00", "start 1:37.5", "start 3:15", "start 4:52.5"]) Assert.Contains(start, html, StringComparison.Ordinal);
        Assert.DoesNotContain("<small>start", RecordingSheet.Of(Squad() with { }, new Protocol("quay", "Quay circuit", [], 4, null), Day).ToHtml(), StringComparison.Ordinal);
    }

    [Fact]
    public void There_is_a_box_for_each_set_and_if_wanted_for_each_station()
    {
        static int Boxes(RecordingSheet sheet) => XElement.Parse(sheet.ToHtml()[sheet.ToHtml().IndexOf("<main>", StringComparison.Ordinal)..(sheet.ToHtml().IndexOf("</main>", StringComparison.Ordinal) + 7)]).Descendants("td").Count(cell => cell.Attribute("class") is null && cell.Value.Length == 0);
        var athletes = Labels(Sheet()).Count + 2; // two empty lines for newcomers
        Assert.Equal(athletes * (4 + 1), Boxes(Sheet()));
        Assert.Equal(athletes * 4 * (2 + 1), Boxes(Sheet(5, new() { Stations = true })));
        Assert.Throws<ArgumentException>(() => RecordingSheet.Of(Squad(), new Protocol("p", "p", [], 4, null), Day, new() { Stations = true }));
    }

    [Fact]
    public void The_page_stands_alone_and_names_are_text()
    {
        var html = Sheet().ToHtml();
        Assert.Contains("Quay &amp; &lt;Co&gt;", html, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", html, StringComparison.Ordinal);
        foreach (var trace in (string[])["<script", "http://", "https://", "<link", "<img"]) Assert.DoesNotContain(trace, html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("@page{size:A4 landscape}", Sheet(5, new() { Landscape = true }).ToHtml(), StringComparison.Ordinal);
        Assert.DoesNotContain("landscape", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_table_filled_in_is_imported_without_any_decision(bool stations)
    {
        var sheet = Sheet(2, new() { Stations = stations, HeatSize = 3 });
        var filled = Encoding.UTF8.GetString(sheet.ToCsv()).Split("\r\n").Select((line, row) => row < 2 || line.Length == 0 ? line : line[..line.IndexOf(',', StringComparison.Ordinal)] + (stations ? string.Concat(Enumerable.Repeat(",20.1,40.2,1:00.3", 4)) : ",1:00.3,60.3,61,62.4"));
        var text = ClipboardImport.Read(ImportSource.FromBytes("filled.csv", Encoding.UTF8.GetBytes(string.Join("\r\n", filled))), new() { Squad = Squad(2) });
        var book = ClipboardImport.Read(ImportSource.FromBytes("filled.xlsx", Filled(sheet.ToWorkbook(), stations)), new() { Squad = Squad(2) });
        foreach (var read in (ImportResult[])[text, book])
        {
            Assert.Equal("", string.Join("\n", read.Decisions.Select(decision => decision.Text).Concat(read.Report.Refused.SelectMany(row => row.Problems).Select(problem => problem.ToString()))));
            Assert.Equal(["a1", "a2", "d1", "d2", "j1"], read.NewSessions.Select(session => session.AthleteId).Order());
            Assert.All(read.NewSessions, session => Assert.Equal((Day, "quay", 60.3), (session.Date, session.Protocol.Id, session.TimesSeconds[0])));
            Assert.All(read.NewSessions, session => Assert.Equal(stations ? 8 : 0, session.Stations.Count));
        }
    }

    [Fact]
    public void The_workbook_is_valid_and_holds_text_so_that_a_time_stays_a_time()
    {
        using var book = SpreadsheetDocument.Open(new MemoryStream(Sheet().ToWorkbook()), false);
        var errors = new OpenXmlValidator(FileFormatVersions.Office2019).Validate(book).Select(error => $"{error.Path?.XPath}: {error.Description}");
        Assert.Equal("", string.Join("\n", errors));
        var styles = book.WorkbookPart!.WorkbookStylesPart!.Stylesheet!.CellFormats!.Elements<CellFormat>().ToList();
        // 49 is the number of the format "Text" (ISO/IEC 29500-1, 18.8.30).
        Assert.All(book.WorkbookPart.WorksheetParts.Single().Worksheet!.Descendants<Cell>(), cell => Assert.Equal(49u, styles[(int)cell.StyleIndex!.Value].NumberFormatId!.Value));
    }

    private static string Cells(byte[] workbook)
    {
        using var book = SpreadsheetDocument.Open(new MemoryStream(workbook), false);
        return book.WorkbookPart!.WorksheetParts.Single().Worksheet!.InnerText;
    }

    /// <summary>Fills the boxes as a spreadsheet does with cells that are formatted as text.</summary>
    private static byte[] Filled(byte[] workbook, bool stations)
    {
        using var stream = new MemoryStream();
        stream.Write(workbook);
        using (var book = SpreadsheetDocument.Open(stream, true))
        {
            foreach (var row in book.WorkbookPart!.WorksheetParts.Single().Worksheet!.Descendants<Row>().Skip(2))
            {
                string[] times = stations ? ["20.1", "40.2", "1:00.3"] : ["1:00.3", "60.3", "61", "62.4"];
                var k = 0;
                foreach (var cell in row.Elements<Cell>().Skip(1)) (cell.DataType, cell.InlineString) = (CellValues.InlineString, new InlineString(new Text(times[k++ % times.Length])));
            }
        }

        return stream.ToArray();
    }
}
