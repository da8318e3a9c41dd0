using System.IO.Compression;
using System.Text;
using SquadAnalytics.Import;
using SquadAnalytics.SampleSquad;
using static SquadAnalytics.SampleSquad.WorkbookCell;
using static SquadAnalytics.Tests.Import.ImportTexts;

namespace SquadAnalytics.Tests.Import;

public sealed class WorkbookTests
{
    private static readonly IReadOnlyList<WorkbookCell> Header = [Shared("Athlete"), Shared("Date"), Inline("Protocol"), Shared("Set 1"), Shared("Set 2"), Shared("Set 3"), Shared("Set 4"), Shared("Total")];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Dates_texts_and_formula_values_are_read_in_both_date_systems(bool countsFrom1904)
    {
        var result = Read([new WorkbookSheet("Tests", [Header, [Shared("Bo Lindqvist"), Of(Date, countsFrom1904), Shared("quay-v1"), Of(62.4), Inline("1:03.1"), Of(64), Of(69.2), Formula("SUM(D2:G2)", 258.70000000000005)]])], countsFrom1904);
        Assert.Equal(1, result.Report.Kept);
        Assert.Equal(Date, result.NewSessions[0].Date);
        Assert.Equal([62.4, 63.1, 64, 69.2], Times(result.NewSessions[0]));
    }

    [Fact]
    public void Times_stored_as_a_fraction_of_a_day_are_a_decision()
    {
        IReadOnlyList<WorkbookSheet> sheets = [new WorkbookSheet("Tests", [Header, [Shared("BL"), Of(Date), Shared("quay-v1"), Typed(1, 2), Typed(1, 3), Of(64), Typed(1, 9)], [Shared("ZB"), Of(Date), Shared("quay-v1"), Of(70), Of(71), Of(72), Of(73)]])];
        var asked = Read(sheets);
        var decision = Assert.Single(asked.Decisions);
        Assert.Equal(DecisionKind.DayFraction, decision.Kind);
        Assert.Equal((1, 1), (asked.Report.Kept, asked.Report.DecisionRows));
        Assert.Contains("62 s", decision.Text, StringComparison.Ordinal);
        Assert.Equal("1:02", asked.Report.Held[0].Cells[3].Text);
        Assert.Equal([62, 63, 64, 69], Times(Read(sheets, false, Known.Answering(decision.Id, "minutes:seconds")).NewSessions[0]));
        var asStored = Read(sheets, false, Known.Answering(decision.Id, "hours:minutes:seconds"));
        Assert.Contains("3720 s is more than three start intervals", Assert.Single(asStored.Report.Refused).Problems[0].Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Times_stored_with_their_seconds_are_asked_apart_from_those_stored_as_hours()
    {
        IReadOnlyList<WorkbookSheet> sheets = [new WorkbookSheet("Tests", [Header, [Shared("BL"), Of(Date), Shared("quay-v1"), Elapsed(62.4), Elapsed(63.1), Typed(1, 4), Elapsed(69.2)]])];
        var ids = Read(sheets).Decisions.Select(decision => decision.Id).Order().ToList();
        Assert.Equal(["day-fraction:clip.xlsx:Tests:hours", "day-fraction:clip.xlsx:Tests:seconds"], ids);
        Assert.Equal([62.4, 63.1, 64, 69.2], Times(Read(sheets, false, Known.Answering(ids[0], "minutes:seconds", ids[1], "hours:minutes:seconds")).NewSessions[0]));
    }

    [Fact]
    public void A_date_where_a_time_belongs_is_refused_with_its_sheet_and_row()
    {
        var problem = Assert.Single(Assert.Single(Read([new WorkbookSheet("Tests", [[], Header, [Shared("BL"), Of(Date), Shared("quay-v1"), Of(Date), Of(63), Of(64), Of(65)]])]).Report.Refused).Problems);
        Assert.Equal(("Tests", 3L, "Set 1", 4, "2031-03-04"), (problem.Sheet, problem.Line, problem.Column, problem.ColumnNumber, problem.Text));
    }

    [Fact]
    public void A_sheet_named_after_a_date_gives_its_rows_that_date_and_hidden_sheets_are_passed_over()
    {
        var rows = new IReadOnlyList<WorkbookCell>[] { [Shared("Name"), Shared("1"), Shared("2"), Shared("3"), Shared("4")], [Shared("BL"), Of(62), Of(63), Of(64), Of(65)] };
        var result = Read([new WorkbookSheet("4 March 2031", rows), new WorkbookSheet("old", rows) { IsHidden = true }], false, Known with { Protocol = "quay-v1" });
        Assert.Equal(Date, Assert.Single(result.NewSessions).Date);
        Assert.Contains(result.Report.Notes, note => note.Contains("hidden sheet 'old'", StringComparison.Ordinal));
    }

    [Fact]
    public void A_package_that_unpacks_to_far_more_than_it_weighs_is_refused()
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, true))
        {
            using var entry = archive.CreateEntry("xl/worksheets/sheet1.xml").Open();
            var zeros = new byte[1 << 20];
            for (var k = 0; k < 300; k++) entry.Write(zeros);
        }

        Assert.True(stream.Length < 1 << 20);
        Assert.Contains("256 MB", Unreadable(stream.ToArray()), StringComparison.Ordinal);
    }

    [Fact]
    public void Entities_that_expand_are_refused()
    {
        var bytes = Changed("xl/worksheets/sheet1.xml", xml => xml.Replace("<x:worksheet", "<!DOCTYPE b [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]><x:worksheet", StringComparison.Ordinal));
        Assert.Contains("damaged", Unreadable(bytes), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("r=\"2\"", "r=\"1\"", "out of order")]
    [InlineData("r=\"D2\"", "r=\"XFD2\"", "more than 1000 columns")]
    [InlineData("t=\"s\"><x:v>0<", "t=\"s\"><x:v>999<", "does not hold")]
    [InlineData("</x:sheetData>", "", "damaged")]
    public void A_damaged_sheet_is_refused_with_a_reason(string from, string to, string reason) =>
        Assert.Contains(reason, Unreadable(Changed("xl/worksheets/sheet1.xml", xml => xml.Replace(from, to, StringComparison.Ordinal))), StringComparison.Ordinal);

    [Fact]
    public void An_old_or_encrypted_workbook_says_so() =>
        Assert.Contains("encrypted", Unreadable([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1]), StringComparison.Ordinal);

    private static byte[] Changed(string part, Func<string, string> change)
    {
        var stream = new MemoryStream();
        stream.Write(WorkbookWriter.Write([new WorkbookSheet("Tests", [Header, [Shared("BL"), Of(Date), Shared("quay-v1"), Of(62), Of(63), Of(64), Of(65)]])]));
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Update, true))
        {
            var entry = archive.GetEntry(part)!;
            string xml;
            using (var reader = new StreamReader(entry.Open(), Encoding.UTF8)) xml = reader.ReadToEnd();
            var changed = change(xml);
            Assert.NotEqual(xml, changed);
            entry.Delete();
            using var writer = new StreamWriter(archive.CreateEntry(part).Open());
            writer.Write(changed);
        }

        return stream.ToArray();
    }

    private static string Unreadable(byte[] bytes)
    {
        var result = ClipboardImport.Read(ImportSource.FromBytes("clip.xlsx", bytes), Known);
        AssertAccounted(result);
        return Assert.Single(Assert.Single(result.Report.Refused).Problems).Reason;
    }

    private static ImportResult Read(IReadOnlyList<WorkbookSheet> sheets, bool countsFrom1904 = false, ImportOptions? options = null)
    {
        var result = ClipboardImport.Read(ImportSource.FromBytes("clip.xlsx", WorkbookWriter.Write(sheets, countsFrom1904)), options ?? Known);
        AssertAccounted(result);
        return result;
    }
}
