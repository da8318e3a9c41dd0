using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>
/// Lets a fragment of HTML and SVG through an allow-list and writes it anew. What is not on the list is left out with everything in it;
/// a fragment that is not well-formed is shown as the text it is. Nothing that runs, loads, links by script or restyles the page survives.
/// </summary>
/// <remarks>The fragment is read as XML without a document type, never by a lenient parser, and the output is written by this class, so that
/// a browser reads the same tree that was checked.</remarks>
public static partial class FragmentSanitizer
{
    private const int DeepestElement = 256;

    /// <summary>Returns the fragment with only allowed elements and attributes.</summary>
    /// <param name="fragment">HTML written as XML (every element closed, attributes quoted), with or without inline SVG.</param>
    public static string Sanitize(string fragment)
    {
        ArgumentNullException.ThrowIfNull(fragment);
        try
        {
            var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreComments = true, IgnoreProcessingInstructions = true };
            using var reader = XmlReader.Create(new StringReader($"<root>{NamedEntity().Replace(WithoutDeclaration(fragment), Decoded)}</root>"), settings);
            var html = new StringBuilder(fragment.Length);
            reader.MoveToContent();
            Children(reader, html, inSvg: false);
            while (reader.Read())
            {
                // Anything after the end of the wrapper is a fragment that closed it early: the reader throws.
            }

            return html.ToString();
        }
        catch (XmlException)
        {
            return AsText(fragment);
        }
    }

    /// <summary>The fragment as visible text, for output that is not markup or is not well-formed.</summary>
    public static string AsText(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return $"<pre>{Html.Escape(text)}</pre>\n";
    }

    private static void Children(XmlReader reader, StringBuilder html, bool inSvg)
    {
        if (reader.Depth > DeepestElement) throw new XmlException($"Nested deeper than {DeepestElement.ToString(CultureInfo.InvariantCulture)} elements.");
        if (reader.IsEmptyElement) return;
        var depth = reader.Depth;
        while (reader.Read() && !(reader.NodeType == XmlNodeType.EndElement && reader.Depth == depth))
        {
            if (reader.NodeType == XmlNodeType.Element) Element(reader, html, inSvg);
            else if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.Whitespace or XmlNodeType.SignificantWhitespace) html.Append(Html.Escape(reader.Value));
        }
    }

    private static void Element(XmlReader reader, StringBuilder html, bool inSvg)
    {
        var name = reader.LocalName;
        var svg = inSvg || name == "svg";
        if (reader.Prefix.Length > 0 || !(svg ? AllowedMarkup.SvgElements : AllowedMarkup.HtmlElements).Contains(name))
        {
            Skip(reader);
            return;
        }

        html.Append('<').Append(name);
        Attributes(reader, html, svg);
        if (!svg && AllowedMarkup.VoidElements.Contains(name))
        {
            html.Append("/>");
            Skip(reader);
            return;
        }

        // Inside SVG a browser reads a closed tag as XML does: thousands of dots need no second tag.
        if (inSvg && reader.IsEmptyElement)
        {
            html.Append("/>");
            return;
        }

        html.Append('>');

        // A title or description inside SVG is a place where a browser goes back to reading HTML: text only.
        if (svg && name is "title" or "desc") html.Append(Html.Escape(InnerText(reader)));
        else Children(reader, html, svg);
        html.Append("</").Append(name).Append('>');
    }

    private static void Attributes(XmlReader reader, StringBuilder html, bool svg)
    {
        while (reader.MoveToNextAttribute())
        {
            if (AllowedMarkup.Attribute(reader.Name, reader.Value, svg) is { } value)
                html.Append(' ').Append(reader.Name).Append("=\"").Append(Html.Escape(value)).Append('"');
        }

        reader.MoveToElement();
    }

    /// <summary>Moves to the end of the element, so that the caller's next read is what follows it.</summary>
    private static void Skip(XmlReader reader) => InnerText(reader);

    private static string InnerText(XmlReader reader)
    {
        if (reader.IsEmptyElement) return "";
        var text = new StringBuilder();
        var depth = reader.Depth;
        while (reader.Read() && !(reader.NodeType == XmlNodeType.EndElement && reader.Depth == depth))
        {
            if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.SignificantWhitespace) text.Append(reader.Value);
        }

        return text.ToString();
    }

    private static string WithoutDeclaration(string fragment) => XmlDeclaration().Replace(fragment, "", 1);

    /// <summary>HTML's named characters are not XML's: turned into the characters, the five that XML has left alone.</summary>
    private static string Decoded(Match entity) => entity.Value is "&amp;" or "&lt;" or "&gt;" or "&quot;" or "&apos;" ? entity.Value : WebUtility.HtmlDecode(entity.Value);

    [GeneratedRegex("&[A-Za-z][A-Za-z0-9]*;", RegexOptions.CultureInvariant)]
    private static partial Regex NamedEntity();

    [GeneratedRegex(@"^\s*<\?xml[^>]*\?>", RegexOptions.CultureInvariant)]
    private static partial Regex XmlDeclaration();
}
