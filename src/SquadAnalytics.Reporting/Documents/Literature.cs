using System.Text.RegularExpressions;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>The published sources of the methods, as a list of references names them.</summary>
public static partial class Literature
{
    private static readonly IReadOnlyList<string> Lines = [.. EmbeddedFile.ReadText("references.txt").Split('\n', StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>All references, by first author.</summary>
    public static IReadOnlyList<string> All => Lines;

    /// <summary>The references that a text cites by first author and year, for example <c>Hopkins 2000, 2004; Swinton et al. 2018</c>.</summary>
    /// <param name="text">The text.</param>
    public static IReadOnlyList<string> CitedIn(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return [.. All.Where(reference => IsCited(reference, text))];
    }

    private static bool IsCited(string reference, string text)
    {
        var (author, year) = (FirstAuthor().Match(reference).Value, Year().Match(reference).Groups[1].Value);
        if (author.Length == 0 || year.Length == 0) return false;
        for (var at = text.IndexOf(author, StringComparison.Ordinal); at >= 0; at = text.IndexOf(author, at + 1, StringComparison.Ordinal))
        {
            if (at > 0 && char.IsLetter(text[at - 1])) continue;

            // Up to the end of this citation: the next one, or the end of the sentence's part.
            var end = text.IndexOfAny([';', '\n', '·'], at);
            var citation = text[at..(end < 0 ? text.Length : end)];
            if (citation.Length > LongestCitation) citation = citation[..LongestCitation];
            if (citation.Contains(year, StringComparison.Ordinal)) return true;
        }

        return false;
    }

    private const int LongestCitation = 90;

    [GeneratedRegex(@"^[\p{L}\-' ]*?\p{L}+(?= \p{Lu}{1,3}\b|/|,| \()", RegexOptions.CultureInvariant)]
    private static partial Regex FirstAuthor();

    [GeneratedRegex(@"\((\d{4})", RegexOptions.CultureInvariant)]
    private static partial Regex Year();
}
