using System.Globalization;
using System.Xml.Linq;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Wordprocessing;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Turns the report's HTML (prose, findings, tables) into paragraphs, lists and tables. What goes in has passed the allow-list.</summary>
internal sealed class WordMarkup(Body body, WordLists lists, WordPictures pictures)
{
    private const int LongestUnbroken = 14;

    private int _figures;
    private int _tables;

    public void Append(string html)
    {
        foreach (var node in XElement.Parse($"<root>{FragmentSanitizer.Sanitize(html)}</root>", LoadOptions.PreserveWhitespace).Nodes()) Block(node);
    }

    /// <summary>A picture with a numbered caption below it.</summary>
    public void Figure(byte[] png, string title, string caption, string alternativeText)
    {
        body.AppendChild(WordText.Paragraph("Picture", pictures.Picture(png, title, alternativeText)));
        body.AppendChild(WordText.Paragraph("Caption", [.. Number("Figure", ++_figures), WordText.Run($"{title} ", bold: true), WordText.Run(caption)]));
    }

    private static IEnumerable<OpenXmlElement> Number(string kind, int number) =>
        [WordText.Run($"{kind} ", bold: true), .. WordText.Field($" SEQ {kind} \\* ARABIC ", number.ToString(CultureInfo.InvariantCulture)), WordText.Run(". ", bold: true)];

    private void Block(XNode node)
    {
        if (node is XText text && !string.IsNullOrWhiteSpace(text.Value)) body.AppendChild(WordText.Paragraph("Normal", Words(text.Value)));
        if (node is not XElement element) return;
        switch (element.Name.LocalName)
        {
            case "h1" or "h2": Paragraph("Heading1", element); break;
            case "h3": Paragraph("Heading2", element); break;
            case "h4" or "h5" or "h6": Paragraph("Heading3", element); break;
            case "p": Paragraph((string?)element.Attribute("class") is "note" or "basis" ? "Note" : "Normal", element); break;
            case "blockquote": Paragraph("Quote", element); break;
            case "pre": Preformatted(element.Value); break;
            case "ul" or "ol": List(element); break;
            case "table": Table(element); break;
            case "figure": PictureLeftOut(element); break;
            case "details" or "hr": break;
            default:
                if (element.Elements().Any(child => IsBlock(child.Name.LocalName))) foreach (var child in element.Nodes()) Block(child);
                else Paragraph("Normal", element);
                break;
        }
    }

    private static bool IsBlock(string name) =>
        name is "p" or "div" or "section" or "table" or "ul" or "ol" or "pre" or "blockquote" or "figure" or "details" or "h1" or "h2" or "h3" or "h4" or "dl" or "dt" or "dd";

    private void Paragraph(string style, XElement element) => body.AppendChild(WordText.Paragraph(style, [.. Runs(element, false, false, false, null)]));

    private void Preformatted(string text)
    {
        foreach (var line in text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n')) body.AppendChild(WordText.Paragraph("Preformatted", line));
    }

    private void List(XElement list)
    {
        var number = lists.Begin(list.Name.LocalName == "ol");
        foreach (var item in list.Elements("li"))
        {
            var paragraphs = item.Elements("p").ToList();
            var first = paragraphs.Count > 0 ? paragraphs[0] : item;
            body.AppendChild(new Paragraph(
            [
                new ParagraphProperties(new ParagraphStyleId { Val = "ListParagraph" }, new NumberingProperties(new NumberingLevelReference { Val = 0 }, new NumberingId { Val = number })),
                .. Runs(first, false, false, false, null),
            ]));
            foreach (var further in paragraphs.Skip(1))
                body.AppendChild(new Paragraph([new ParagraphProperties(new ParagraphStyleId { Val = "Note" }, new Indentation { Left = "400" }), .. Runs(further, false, false, false, null)]));
        }
    }

    private void Table(XElement table)
    {
        if (table.Element("caption") is { } caption)
            body.AppendChild(WordText.Paragraph("TableCaption", [.. Number("Table", ++_tables), .. Runs(caption, true, false, false, null)]));
        // Figures stay on one line, as on the page: an interval of two lines is misread.
        foreach (var text in table.Descendants("td").Where(static cell => (string?)cell.Attribute("class") == "number").DescendantNodes().OfType<XText>()) text.Value = text.Value.Replace(' ', '\u00A0');
        var rows = table.Descendants("tr").ToList();
        var widths = WordColumns.Widths(rows);
        var grid = new TableGrid(widths.Select(static width => new GridColumn { Width = width.ToString(CultureInfo.InvariantCulture) }));
        var word = new DocumentFormat.OpenXml.Wordprocessing.Table(
            new TableProperties(new TableStyle { Val = "ReportTable" }, new TableWidth { Width = "0", Type = TableWidthUnitValues.Auto }, new TableLook { Val = "0020", FirstRow = true, LastRow = false, FirstColumn = false, LastColumn = false, NoHorizontalBand = true, NoVerticalBand = true }),
            grid);
        foreach (var row in rows)
        {
            var wordRow = new DocumentFormat.OpenXml.Wordprocessing.TableRow(new TableRowProperties(row.Parent?.Name.LocalName == "thead" ? [new CantSplit(), new TableHeader()] : [new CantSplit()]));
            // A short table stays on one page, its rows with the next one.
            var staysWithNext = rows.Count <= LongestUnbroken && row != rows[^1];
            foreach (var (cell, width) in row.Elements().Zip(widths)) wordRow.AppendChild(Cell(cell, width, staysWithNext));
            word.AppendChild(wordRow);
        }

        body.AppendChild(word);
        body.AppendChild(WordText.Paragraph("Note", ""));
    }

    private static DocumentFormat.OpenXml.Wordprocessing.TableCell Cell(XElement cell, int width, bool staysWithNext)
    {
        var properties = new ParagraphProperties(new ParagraphStyleId { Val = "TableText" });
        if (staysWithNext) properties.AppendChild(new KeepNext());
        if (((string?)cell.Attribute("class"))?.Split(' ').Contains("number") == true) properties.AppendChild(new Justification { Val = JustificationValues.Right });
        return new DocumentFormat.OpenXml.Wordprocessing.TableCell(
            new TableCellProperties(new TableCellWidth { Width = width.ToString(CultureInfo.InvariantCulture), Type = TableWidthUnitValues.Dxa }),
            new Paragraph([properties, .. Runs(cell, false, false, false, null)]));
    }

    /// <summary>A drawing that came without pixels cannot stand in this document: its content in words does.</summary>
    private void PictureLeftOut(XElement figure)
    {
        var words = figure.Descendants().Select(element => (string?)element.Attribute("aria-label")).FirstOrDefault(label => label is not null) ?? "";
        body.AppendChild(WordText.Paragraph("Note", $"[The picture stands in the web page of this report. {words}]"));
        if (figure.Descendants("figcaption").FirstOrDefault() is { } caption) body.AppendChild(WordText.Paragraph("Caption", [.. Runs(caption, false, false, false, null)]));
    }

    private static IEnumerable<OpenXmlElement> Runs(XElement element, bool bold, bool italic, bool code, VerticalPositionValues? position)
    {
        foreach (var node in element.Nodes())
        {
            if (node is XText text) yield return WordText.Run(Words(text.Value), bold, italic, code, position);
            if (node is not XElement child) continue;
            var name = child.Name.LocalName;
            if (name == "br")
            {
                yield return new Run(new Break());
                continue;
            }

            var inner = Runs(
                child, bold || name is "strong" or "b", italic || name is "em" or "i", code || name is "code" or "kbd" or "samp",
                name == "sub" ? VerticalPositionValues.Subscript : name == "sup" ? VerticalPositionValues.Superscript : position);
            foreach (var run in inner) yield return run;
        }
    }

    /// <summary>Line ends in the source are spaces in the text.</summary>
    private static string Words(string text) => text.ReplaceLineEndings(" ");
}
