using System.Globalization;
using System.Text;
using SquadAnalytics.Import;
using static SquadAnalytics.Tests.Import.ImportTexts;

namespace SquadAnalytics.Tests.Import;

public sealed class EncodingTests
{
    private const string Text = "Sportler;Datum;Protokoll;Satz 1;Satz 2;Satz 3;Satz 4;Gesamt\r\nZoë Brandér;2031-03-04;Quay circuit;62;63;64;69;258\r\nBo Lindqvist;2031-03-04;Quay circuit;70;71;72;73;286\r\n";

    [Theory]
    [InlineData("utf-8", false)]
    [InlineData("utf-8", true)]
    [InlineData("utf-16", true)]
    [InlineData("utf-16BE", true)]
    [InlineData("utf-16", false)]
    [InlineData("utf-32", true)]
    [InlineData("windows-1252", false)]
    [InlineData("iso-8859-1", false)]
    public void Names_arrive_whole_from_any_common_encoding(string name, bool hasMark)
    {
        var encoding = CodePagesEncodingProvider.Instance.GetEncoding(name) ?? Encoding.GetEncoding(name);
        byte[] bytes = [.. hasMark ? encoding.GetPreamble() : [], .. encoding.GetBytes(Text)];
        var result = ClipboardImport.Read(ImportSource.FromBytes("clip.csv", bytes), Known);
        AssertAccounted(result);
        Assert.Equal((2, 2), (result.Report.Rows, result.Report.Kept));
        Assert.Equal("a2", result.NewSessions[0].AthleteId);
    }

    [Theory]
    [InlineData("windows-1251", "Йордан Жеков|Щерба Купев|Иван Йорков")]
    [InlineData("windows-1250", "Łukasz Żółw|Jiří Šťastný|Žofie Řezáčová")]
    public void Other_code_pages_are_detected_and_said_to_be_a_guess(string name, string names)
    {
        var encoding = CodePagesEncodingProvider.Instance.GetEncoding(name)!;
        var text = "Name;Date;Set 1;Set 2\n" + string.Concat(names.Split('|').Select(who => $"{who};2031-03-04;62;63\n"));
        var result = ClipboardImport.Read(ImportSource.FromBytes("clip.csv", encoding.GetBytes(text)));
        Assert.Equal(names.Split('|'), result.NewAthletes.Select(athlete => athlete.DisplayName));
        Assert.Contains(result.Report.Notes, note => note.Contains(name, StringComparison.Ordinal));
    }

    [Fact]
    public void Known_names_decide_between_code_pages()
    {
        // Byte F8 is ø in the western code page and ř in the central European one.
        var squad = new Squad("Quay", [new Athlete("a1", "Jiří Kořen", "JK")], [Quay], []);
        var bytes = CodePagesEncodingProvider.Instance.GetEncoding("windows-1250")!.GetBytes("Name;Date;1;2;3;4\nJiří Kořen;2031-03-04;62;63;64;65\n");
        Assert.Equal("a1", Assert.Single(ClipboardImport.Read(ImportSource.FromBytes("clip.csv", bytes), new ImportOptions { Squad = squad }).NewSessions).AthleteId);
    }

    [Theory]
    [InlineData(",", '\n')]
    [InlineData(";", '\n')]
    [InlineData("\t", '\r')]
    [InlineData("|", '\n')]
    public void The_separator_is_found(string separator, char lineEnd)
    {
        var text = string.Join(lineEnd, "Name,Date,Protocol,1,2,3,4", "BL,2031-03-04,quay-v1,62.1,63,64,69").Replace(",", separator, StringComparison.Ordinal);
        Assert.Equal([62.1, 63, 64, 69], Times(Assert.Single(Read(text, Known).NewSessions)));
    }

    [Fact]
    public void A_separator_line_of_a_spreadsheet_is_heeded_and_is_no_row()
    {
        var report = Read("sep=;\r\nName;Date;Protocol;1;2;3;4\r\nBL;2031-03-04;quay-v1;62;63;64;69\r\n", Known).Report;
        Assert.Equal((1, 1), (report.Rows, report.Kept));
    }

    [Fact]
    public void A_semicolon_file_with_decimal_commas_is_not_split_at_the_commas() =>
        Assert.Equal([62.5, 63.5, 64.5, 69.5], Times(Assert.Single(Read("Name;Date;Protocol;1;2;3;4\nBL;2031-03-04;quay-v1;62,5;63,5;64,5;69,5\n", Known with { DecimalMark = DecimalMark.Comma }).NewSessions)));

    [Fact]
    public void A_stray_quotation_mark_does_not_swallow_the_rows_below()
    {
        var result = Read("Name,Date,Protocol,1,2,3,4\n\"BL,2031-03-04,quay-v1,62,63,64,69\nZB,2031-03-04,quay-v1,70,71,72,73\nBL,2031-03-04,quay-v1,62,63,64,69\n", Known);
        Assert.Equal(3, result.Report.Rows);
        Assert.Equal(2, result.NewSessions.Count);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_reading_does_not_depend_on_the_machines_culture(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
            var result = Read("TITLE: Quay circuit - 4 March 2031\nBOXER ID,SET 1,SET 2,SET 3,SET 4,TOTAL\nBL,62.5,63,64,69,258.5\nbo lindqvist,1.02,62.123,1:02.5,dnf,-\n", Known);
            Assert.Equal(62.5, result.NewSessions[0].Sets[0].Work!.Value.Value);
            Assert.Equal(Date, result.NewSessions[0].Date);
            Assert.Equal("name:bo lindqvist", Assert.Single(result.Decisions).Id);
            Assert.Equal("2 rows read: 1 kept, 0 refused, 1 awaiting a decision.", result.Report.ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.CurrentUICulture = before;
        }
    }
}
