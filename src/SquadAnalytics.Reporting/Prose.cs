using System.Text;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting;

/// <summary>Paragraphs that are written from results, such as the methods of a report.</summary>
public sealed record Prose
{
    /// <summary>Makes the text.</summary>
    /// <param name="paragraphs">The paragraphs; at least one.</param>
    /// <exception cref="ArgumentException">There is no paragraph.</exception>
    public Prose(params IReadOnlyList<string> paragraphs)
    {
        ArgumentNullException.ThrowIfNull(paragraphs);
        Paragraphs = paragraphs.Count > 0 ? [.. paragraphs] : throw new ArgumentException("There must be a paragraph.", nameof(paragraphs));
    }

    /// <summary>The paragraphs.</summary>
    public IReadOnlyList<string> Paragraphs { get; }

    /// <summary>As HTML paragraphs.</summary>
    public string ToHtml()
    {
        var html = new StringBuilder();
        foreach (var paragraph in Paragraphs) html.Append("<p>").Append(Html.Sentence(paragraph)).Append("</p>\n");
        return html.ToString();
    }

    /// <summary>The paragraphs, an empty line between them.</summary>
    public override string ToString() => string.Join("\n\n", Paragraphs);
}
