using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using DocumentFormat.OpenXml.Wordprocessing;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Reporting.Tests.Figures;
using DW = DocumentFormat.OpenXml.Drawing.Wordprocessing;

namespace SquadAnalytics.Reporting.Tests.Documents;

public class WordReportTests
{
    private static ReportDocument Example(string text) => new(text, "Why does this boxer slow after set three?")
    {
        Subject = text,
        DataNote = "Invented data",
        Findings = [new Finding(text) { Source = text, Notes = [text] }, new Finding("Second.")],
        Parts =
        [
            new FragmentPart("<h2>Profile</h2><p>Prose with <strong>weight</strong>, <em>stress</em>, <code>code</code>, s<sub>w</sub> and m<sup>2</sup>.<br/>New line.</p><ul><li>one</li><li>two</li></ul><blockquote>Quoted.</blockquote>"),
            new FigurePart(Examples.Paced()),
            new PicturePart(Examples.Changed().ToHtml(), Examples.Changed().ToPng()),
            new FragmentPart(Examples.Season().ToHtml()),
            new TablePart(Tables.Stations(Examples.Shares(), new NumberFormat(1))),
            new TablePart(new Table(text, [new(text)], [[text]])),
            new WorkingPart("C#", "secret working"), new TextPart(text), new FailurePart("cell 4, line 2", text),
            new FindingsPart(new Findings(new Finding("Third."))),
        ],
        Foot = new ReportFoot { Parameters = [new("athlete", text)], DataFingerprint = "ab12", References = ["Bland JM, Altman DG (1986). Lancet i:307-310."], MadeAt = new DateTimeOffset(2031, 3, 4, 20, 15, 0, TimeSpan.Zero) },
    };

    private static WordprocessingDocument Open(string text = "Why the slow-down?") => WordprocessingDocument.Open(new MemoryStream(WordReport.ToBytes(Example(text))), false);

    private static IReadOnlyList<string> TextsOf(WordprocessingDocument document, string style) =>
        [.. document.MainDocumentPart!.Document!.Body!.Descendants<Paragraph>().Where(paragraph => paragraph.ParagraphProperties?.ParagraphStyleId?.Val?.Value == style).Select(paragraph => paragraph.InnerText)];

    [Theory]
    [InlineData("Why the slow-down?")]
    [InlineData("<script>alert(1)</script> & \"quotes\" \u0001 İı 漢字")]
    public void The_document_is_valid_open_xml(string text)
    {
        using var document = Open(text);
        var errors = new OpenXmlValidator(FileFormatVersions.Office2019).Validate(document).Select(error => $"{error.Path?.XPath}: {error.Description}");
        Assert.Equal("", string.Join("\n", errors));
    }

    [Fact]
    public void Headings_captions_and_references_have_real_styles()
    {
        using var document = Open();
        Assert.Equal(["Why the slow-down?"], TextsOf(document, "Title"));
        Assert.Equal(["Findings", "Profile", "Cautions", "References", "How to make this report again"], TextsOf(document, "Heading1"));
        Assert.Equal(["Bland JM, Altman DG (1986). Lancet i:307-310."], TextsOf(document, "Reference"));
        var styles = document.MainDocumentPart!.StyleDefinitionsPart!.Styles!.Elements<Style>().Select(style => style.StyleId!.Value!).ToHashSet();
        var used = document.MainDocumentPart!.Document!.Body!.Descendants<ParagraphStyleId>().Select(style => style.Val!.Value!).Distinct();
        Assert.All(used, style => Assert.Contains(style, styles));
    }

    [Fact]
    public void Figures_and_tables_are_numbered_by_fields()
    {
        using var document = Open();
        var fields = document.MainDocumentPart!.Document!.Body!.Descendants<FieldCode>().Select(code => code.Text.Trim()).ToList();
        Assert.Equal(2, fields.Count(field => field.StartsWith("SEQ Figure", StringComparison.Ordinal)));
        Assert.Equal(2, fields.Count(field => field.StartsWith("SEQ Table", StringComparison.Ordinal)));
        Assert.StartsWith("Figure  SEQ Figure \\* ARABIC 1. How was this session paced? Work time of each set", TextsOf(document, "Caption")[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Every_picture_has_its_content_in_words()
    {
        using var document = Open();
        var pictures = document.MainDocumentPart!.Document!.Body!.Descendants<DW.DocProperties>().ToList();
        Assert.Equal([Examples.Paced().AlternativeText, Examples.Changed().AlternativeText], pictures.Select(picture => picture.Description!.Value));
        Assert.Contains(TextsOf(document, "Note"), note => note.Contains(Examples.Season().AlternativeText, StringComparison.Ordinal));
    }

    [Fact]
    public void Tables_keep_their_heading_row_and_right_aligned_figures()
    {
        using var document = Open();
        var table = document.MainDocumentPart!.Document!.Body!.Elements<DocumentFormat.OpenXml.Wordprocessing.Table>().First();
        Assert.NotNull(table.Elements<TableRow>().First().TableRowProperties!.GetFirstChild<TableHeader>());
        var cell = table.Elements<TableRow>().ElementAt(1).Elements<DocumentFormat.OpenXml.Wordprocessing.TableCell>().ElementAt(3);
        Assert.Equal("+3.20", cell.InnerText);
        Assert.Equal(JustificationValues.Right, cell.Descendants<Justification>().Single().Val!.Value);
    }

    [Fact]
    public void The_working_is_left_out_and_numbered_lists_begin_at_one()
    {
        using var document = Open();
        Assert.DoesNotContain("secret working", document.MainDocumentPart!.Document!.InnerText, StringComparison.Ordinal);
        var overrides = document.MainDocumentPart!.NumberingDefinitionsPart!.Numbering!.Descendants<StartOverrideNumberingValue>().Count();
        Assert.Equal(2, overrides);
    }
}
