using System.Text.RegularExpressions;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Which elements and attributes may stand in a fragment, and which values.</summary>
internal static partial class AllowedMarkup
{
    public static readonly HashSet<string> HtmlElements = Words(
        "p div span h1 h2 h3 h4 h5 h6 ul ol li dl dt dd table caption thead tbody tfoot tr th td figure figcaption blockquote pre code em strong b i sub sup small " +
        "br hr a abbr time section details summary kbd samp var del ins img svg");

    public static readonly HashSet<string> VoidElements = Words("br hr img");

    public static readonly HashSet<string> SvgElements = Words(
        "svg g path line polyline polygon rect circle ellipse text tspan defs clipPath title desc linearGradient radialGradient stop pattern");

    private static readonly HashSet<string> HtmlAttributes = Words("class lang dir title scope colspan rowspan headers datetime open alt width height id");

    private static readonly HashSet<string> SvgAttributes = Words(
        "class id viewBox width height x y x1 y1 x2 y2 cx cy r rx ry d points dx dy transform fill fill-opacity fill-rule stroke stroke-width stroke-opacity " +
        "stroke-linecap stroke-linejoin stroke-dasharray stroke-dashoffset stroke-miterlimit opacity font-family font-size font-weight font-style text-anchor " +
        "dominant-baseline textLength lengthAdjust clip-path clip-rule clipPathUnits gradientUnits gradientTransform patternUnits offset stop-color stop-opacity " +
        "preserveAspectRatio xml:space xmlns version");

    /// <summary>The value as it may be written, or null where the attribute is left out.</summary>
    public static string? Attribute(string name, string value, bool svg)
    {
        if (name.StartsWith("aria-", StringComparison.Ordinal) || name == "role") return value;
        if (!svg && name == "tabindex") return value == "0" ? value : null;
        if (name == "xmlns") return svg && value == "http://www.w3.org/2000/svg" ? value : null;
        if (!svg && name == "href") return Link().IsMatch(value) ? value : null;
        if (!svg && name == "src") return EmbeddedPicture().IsMatch(value) ? value : null;
        if (!(svg ? SvgAttributes : HtmlAttributes).Contains(name)) return null;

        // A paint or clip may point into its own picture, nowhere else.
        if (svg && value.Contains("url", StringComparison.OrdinalIgnoreCase)) return LocalReference().IsMatch(value) ? value : null;
        return value;
    }

    private static HashSet<string> Words(string words) => [.. words.Split(' ')];

    [GeneratedRegex(@"^url\(#[A-Za-z][\w.-]*\)$", RegexOptions.CultureInvariant)]
    private static partial Regex LocalReference();

    [GeneratedRegex(@"^(?:#[\w.-]*|https?://[^\s""'<>\\]+|mailto:[^\s""'<>\\]+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Link();

    [GeneratedRegex(@"^data:image/(?:png|jpeg|gif|webp);base64,[A-Za-z0-9+/=\s]+$", RegexOptions.CultureInvariant)]
    private static partial Regex EmbeddedPicture();
}
