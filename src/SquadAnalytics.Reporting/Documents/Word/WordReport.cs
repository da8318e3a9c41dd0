using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Wordprocessing;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>
/// A report as a word-processor document (Office Open XML): real heading, caption and table styles, numbered figures and tables as fields,
/// alternative texts, page numbers on A4. The working is left out; text stays editable.
/// </summary>
public static class WordReport
{
    /// <summary>Writes a report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="stream">Where to; it must be writable and seekable.</param>
    public static void Write(ReportDocument report, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(stream);
        using var package = WordprocessingDocument.Create(stream, WordprocessingDocumentType.Document);
        package.PackageProperties.Title = WordText.Allowed(report.Title);
        package.PackageProperties.Subject = WordText.Allowed(report.Question);
        package.PackageProperties.Language = "en";
        if (report.Foot.MadeAt is { } madeAt) package.PackageProperties.Created = madeAt.UtcDateTime;
        var main = package.AddMainDocumentPart();
        main.AddNewPart<StyleDefinitionsPart>().Styles = WordStyles.Build();
        var lists = new WordLists(main.AddNewPart<NumberingDefinitionsPart>());
        main.AddNewPart<DocumentSettingsPart>().Settings = new Settings(new UpdateFieldsOnOpen { Val = false }, new Compatibility(new CompatibilitySetting { Name = CompatSettingNameValues.CompatibilityMode, Uri = "http://schemas.microsoft.com/office/word", Val = "15" }));
        var body = new Body();
        main.Document = new Document(body);
        var writer = new WordMarkup(body, lists, new WordPictures(main));
        Compose(report, body, writer);
        body.AppendChild(Page(main));
    }

    /// <summary>A report as the bytes of a file.</summary>
    public static byte[] ToBytes(ReportDocument report)
    {
        using var stream = new MemoryStream();
        Write(report, stream);
        return stream.ToArray();
    }

    private static void Compose(ReportDocument report, Body body, WordMarkup writer)
    {
        if (report.DataNote is { } note) body.AppendChild(WordText.Paragraph("Note", note));
        body.AppendChild(WordText.Paragraph("Title", report.Title));
        body.AppendChild(WordText.Paragraph("Subtitle", report.Question));
        if (report.Subject is { } subject) body.AppendChild(WordText.Paragraph("Note", subject));
        body.AppendChild(WordText.Paragraph("Heading1", "Findings"));
        writer.Append(report.Findings.Count > 0 ? new Findings(report.Findings).ToHtml() : "<p>This report states no findings.</p>");
        foreach (var part in report.Parts) Part(part, writer);
        Foot(report.Foot, body);
    }

    private static void Part(ReportPart part, WordMarkup writer)
    {
        switch (part)
        {
            case WorkingPart:
                break;
            case FigurePart { Figure: var figure }:
                writer.Figure(figure.ToPng(), figure.Title, figure.Caption, figure.AlternativeText);
                break;
            case PicturePart picture:
                writer.Figure(picture.Png, picture.Title, picture.Caption, picture.AlternativeText);
                break;
            default:
                writer.Append(part.ToHtml());
                break;
        }
    }

    private static void Foot(ReportFoot foot, Body body)
    {
        body.AppendChild(WordText.Paragraph("Heading1", "Cautions"));
        foreach (var caution in foot.Cautions)
            body.AppendChild(WordText.Paragraph("Normal", WordText.Run($"{caution.Topic}. ", bold: true), WordText.Run(caution.Source is { } source ? $"{caution.Text} ({source})" : caution.Text)));
        if (foot.References.Count > 0)
        {
            body.AppendChild(WordText.Paragraph("Heading1", "References"));
            foreach (var reference in foot.References) body.AppendChild(WordText.Paragraph("Reference", reference));
        }

        body.AppendChild(WordText.Paragraph("Heading1", "How to make this report again"));
        foreach (var parameter in foot.Parameters) body.AppendChild(Entry(parameter.Name, parameter.Value));
        if (foot.DataFingerprint is { } fingerprint) body.AppendChild(Entry("data (SHA-256)", fingerprint));
        body.AppendChild(Entry("versions", string.Join(", ", foot.Versions)));
        if (foot.MadeAtText is { } madeAt) body.AppendChild(Entry("made", madeAt));
    }

    private static Paragraph Entry(string name, string value) =>
        WordText.Paragraph("Note", WordText.Run($"{name}: ", bold: true), WordText.Run(value));

    /// <summary>A4 upright with the page number at the foot.</summary>
    private static SectionProperties Page(MainDocumentPart main)
    {
        var part = main.AddNewPart<FooterPart>();
        part.Footer = new Footer(new Paragraph([new ParagraphProperties(new ParagraphStyleId { Val = "Footer" }, new Justification { Val = JustificationValues.Center }), .. WordText.Field(" PAGE ", "1")]));
        const int millimetre = 567; // twentieths of a point in 10 mm
        return new SectionProperties(
            new FooterReference { Type = HeaderFooterValues.Default, Id = main.GetIdOfPart(part) },
            new PageSize { Width = 11906, Height = 16838 },
            new PageMargin { Top = 2 * millimetre + 200, Bottom = 2 * millimetre + 200, Left = 2 * millimetre + 200, Right = 2 * millimetre + 200, Header = 708, Footer = 708, Gutter = 0 });
    }
}
