using System.Xml;
using System.Xml.Linq;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>A figure that was drawn elsewhere: its HTML for the page and its pixels for documents that take no drawing.</summary>
public sealed record PicturePart : ReportPart
{
    private readonly string _html;

    /// <summary>Makes the part from what a figure produced.</summary>
    /// <param name="html">The figure's HTML; it need not be trusted.</param>
    /// <param name="png">The same figure as PNG.</param>
    public PicturePart(string html, byte[] png)
    {
        _html = FragmentSanitizer.Sanitize(html);
        Png = png ?? throw new ArgumentNullException(nameof(png));
        var figure = Parse(_html);
        var caption = figure?.Descendants("figcaption").FirstOrDefault();
        Title = caption?.Element("strong")?.Value.Trim() ?? "";
        Caption = caption is null ? "" : string.Concat(caption.Nodes().Where(node => node is not XElement { Name.LocalName: "strong" }).Select(node => node is XElement element ? element.Value : ((XText)node).Value)).Trim();
        AlternativeText = figure?.Descendants().Select(element => (string?)element.Attribute("aria-label")).FirstOrDefault(label => label is not null) ?? Title;
    }

    /// <summary>The figure's title.</summary>
    public string Title { get; }

    /// <summary>The figure's caption.</summary>
    public string Caption { get; }

    /// <summary>The figure's content in words.</summary>
    public string AlternativeText { get; }

    /// <summary>The figure as PNG.</summary>
    public IReadOnlyList<byte> Pixels => Png;

    /// <summary>The figure as PNG.</summary>
    internal byte[] Png { get; }

    /// <inheritdoc />
    public override string ToHtml() => _html;

    private static XElement? Parse(string html)
    {
        try
        {
            return XElement.Parse($"<root>{html}</root>");
        }
        catch (XmlException)
        {
            return null;
        }
    }
}
