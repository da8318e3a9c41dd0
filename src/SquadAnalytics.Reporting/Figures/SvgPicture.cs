using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>
/// Turns what the drawing library writes into SVG that belongs in a page: it scales, it says what it shows, its letters are words with an
/// anchor, its ids clash with no other picture's, and its frame colours follow the page.
/// </summary>
internal static partial class SvgPicture
{
    /// <summary>On the drawing itself: over how many athletes its aggregates are.</summary>
    public const string AthletesAttribute = "data-athletes";

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    // What marks take over from their group. The class holds the page's colours for fill and stroke and nothing else.
    private static readonly string[] Inherited = ["fill", "fill-opacity", "stroke", "stroke-width", "stroke-opacity", "stroke-dasharray", "stroke-dashoffset", "stroke-linecap", "stroke-linejoin", "class"];

    /// <summary>A picture as it stands in a page.</summary>
    public static string Inline(XElement picture) => picture.ToString(SaveOptions.DisableFormatting);

    /// <summary>A picture as a file: with size, ground and title.</summary>
    public static string StandAlone(XElement picture, Drawing drawing, string title, string alternativeText, int? athletes)
    {
        var root = new XElement(picture);
        if (athletes is { } count) root.SetAttributeValue(AthletesAttribute, count);
        root.AddFirst(
            new XElement(Svg + "title", title),
            new XElement(Svg + "desc", alternativeText),
            new XElement(Svg + "rect", new XAttribute("width", drawing.Width), new XAttribute("height", drawing.Height), new XAttribute("fill", "#FFFFFF")));
        root.SetAttributeValue("width", drawing.Width);
        root.SetAttributeValue("height", drawing.Height);
        return $"<?xml version=\"1.0\" encoding=\"utf-8\"?>\n{root}\n";
    }

    /// <summary>The picture of a drawing, without ground.</summary>
    public static XElement Of(Drawing drawing, string alternativeText)
    {
        var sheet = drawing.ToVector();
        var root = XDocument.Parse(sheet.MarksSvg).Root!;
        root.Attributes().Where(attribute => attribute.Name.LocalName is "xlink" or "width" or "height").Remove();
        root.SetAttributeValue("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {drawing.Width} {drawing.Height}"));
        root.SetAttributeValue("role", "img");
        root.SetAttributeValue("aria-label", alternativeText);
        ShareClips(root);
        root.Add(sheet.Texts.Select(Words));
        var prefix = "f" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(root.ToString())))[..10];
        foreach (var element in root.Descendants().ToList())
        {
            FollowThePage(element);
            foreach (var attribute in element.Attributes().ToList()) Tidy(attribute, prefix);
            if (element.Name == Svg + "ellipse") AsCircle(element);
            if (!element.HasElements && element.Value.Length == 0) element.RemoveNodes();
        }

        foreach (var group in root.Descendants(Svg + "g").ToList()) ShareLook(group);
        root.Elements(Svg + "rect").Where(rect => IsGround(rect, drawing)).Remove();
        return root;
    }

    /// <summary>An ellipse as wide as high is a circle, which is shorter to say; a dot stands within a tenth of a pixel.</summary>
    private static void AsCircle(XElement ellipse)
    {
        if ((string?)ellipse.Attribute("rx") is not { } radius || radius != (string?)ellipse.Attribute("ry")) return;
        ellipse.Name = Svg + "circle";
        ellipse.SetAttributeValue("rx", null);
        ellipse.SetAttributeValue("ry", null);
        ellipse.SetAttributeValue("r", radius);
        foreach (var place in (string[])["cx", "cy"])
        {
            if ((string?)ellipse.Attribute(place) is { } at) ellipse.SetAttributeValue(place, float.Parse(at, CultureInfo.InvariantCulture).ToString("0.#", CultureInfo.InvariantCulture));
        }
    }

    /// <summary>Marks of one group that look alike say so once, on the group: a squad's season has thousands of dots.</summary>
    private static void ShareLook(XElement group)
    {
        var marks = group.Elements().ToList();
        if (marks.Count < 2) return;
        foreach (var name in Inherited.Where(name => group.Attribute(name) is null))
        {
            if ((string?)marks[0].Attribute(name) is not { } look || !marks.TrueForAll(mark => (string?)mark.Attribute(name) == look)) continue;
            // A colour that stays on the mark would outrank the class above it.
            if (name == "class" && marks.Exists(mark => (mark.Attribute("fill") ?? mark.Attribute("stroke")) is not null)) continue;
            group.SetAttributeValue(name, look);
            foreach (var mark in marks) mark.SetAttributeValue(name, null);
        }
    }

    /// <summary>
    /// Every mark comes with a frame of its own to be cut by, and most frames are the same: one is kept. Their ids come from a counter of the
    /// whole process: numbered anew, so that the same figure is the same text.
    /// </summary>
    private static void ShareClips(XElement root)
    {
        var kept = new Dictionary<string, string>(StringComparer.Ordinal);
        var renamed = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var clip in root.Descendants(Svg + "clipPath").ToList())
        {
            var frame = string.Concat(clip.Elements());
            var isNew = kept.TryAdd(frame, string.Create(CultureInfo.InvariantCulture, $"c{kept.Count}"));
            renamed[$"url(#{(string)clip.Attribute("id")!})"] = $"url(#{kept[frame]})";
            if (isNew) clip.SetAttributeValue("id", kept[frame]);
            else clip.Remove();
        }

        foreach (var group in root.Descendants().Attributes("clip-path")) group.Value = renamed[group.Value];
    }

    private static bool IsGround(XElement rect, Drawing drawing) =>
        (string?)rect.Attribute("width") == drawing.Width.ToString(CultureInfo.InvariantCulture) && rect.Attribute("x") is null && (float?)rect.Attribute("height") is not null;

    /// <summary>A text as words with an anchor, not as glyphs with a coordinate each: readable, searchable, and sound in another typeface.</summary>
    private static XElement Words(PlacedText text)
    {
        var element = new XElement(
            Svg + "text",
            new XAttribute("x", Number(text.X)),
            new XAttribute("y", Number(text.Y)),
            new XAttribute("font-size", Number(text.Size)),
            new XAttribute("font-family", BundledFont.Stack),
            new XAttribute("fill", text.Color.ToHex()),
            text.Text);
        if (text.Edge != TextEdge.Left) element.SetAttributeValue("text-anchor", text.Edge == TextEdge.Middle ? "middle" : "end");
        if (text.Bold) element.SetAttributeValue("font-weight", "600");
        return element;
    }

    private static void FollowThePage(XElement element)
    {
        var names = new List<string>();
        foreach (var role in (string[])["fill", "stroke"])
        {
            if ((string?)element.Attribute(role) is { } colour && Ink.ClassOf.TryGetValue(colour, out var name)) names.Add($"{role}-{name}");
        }

        if (names.Count > 0) element.SetAttributeValue("class", string.Join(' ', names));
    }

    private static void Tidy(XAttribute attribute, string prefix)
    {
        switch (attribute.Name.LocalName)
        {
            case "stroke-miterlimit" when attribute.Value == "4":
                attribute.Remove();
                break;
            case "id":
                attribute.Value = prefix + attribute.Value;
                break;
            case "clip-path" or "fill" or "stroke" when attribute.Value.StartsWith("url(#", StringComparison.Ordinal):
                attribute.Value = $"url(#{prefix}{attribute.Value[5..]}";
                break;
            case "d" or "x" or "y" or "width" or "height" or "cx" or "cy" or "rx" or "ry" or "transform" or "points" or "stroke-opacity" or "fill-opacity":
                attribute.Value = LongNumber().Replace(attribute.Value, match => Number(float.Parse(match.Value, CultureInfo.InvariantCulture)));
                break;
        }
    }

    private static string Number(float number) => number.ToString("0.##", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"-?\d+\.\d{3,}", RegexOptions.CultureInvariant)]
    private static partial Regex LongNumber();
}
