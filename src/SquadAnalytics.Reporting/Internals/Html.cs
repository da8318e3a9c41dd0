using System.Text;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Reporting.Internals;

/// <summary>Text into HTML: everything that comes from data goes through here and is never markup.</summary>
internal static partial class Html
{
    private const string Months = "Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec";

    /// <summary>Escapes text for element content and for attributes in double quotes; characters that XML forbids become U+FFFD.</summary>
    public static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length + 16);
        foreach (var rune in text.EnumerateRunes())
        {
            switch (rune.Value)
            {
                case '&': escaped.Append("&amp;"); break;
                case '<': escaped.Append("&lt;"); break;
                case '>': escaped.Append("&gt;"); break;
                case '"': escaped.Append("&quot;"); break;
                case '\'': escaped.Append("&#39;"); break;
                case '\t' or '\n' or '\r': escaped.Append((char)rune.Value); break;
                case < 0x20 or (>= 0x7F and < 0xA0) or 0xFFFE or 0xFFFF: escaped.Append('\uFFFD'); break;
                default: escaped.Append(rune.ToString()); break;
            }
        }

        return escaped.ToString();
    }

    /// <summary>Escapes a sentence and keeps numbers on one line with their unit, and dates on one line.</summary>
    public static string Sentence(string text) => Together().Replace(Escape(text), "\u00A0");

    [GeneratedRegex($@"(?<=\d) (?=(?:%|s|AU|sets?|tests?|sessions?|athletes?|weeks?)(?![\w]))|(?<=\b\d\d?) (?=(?:{Months}) \d{{4}}\b)|(?<=\b\d\d? (?:{Months})) (?=\d{{4}}\b)", RegexOptions.CultureInvariant)]
    private static partial Regex Together();
}
