using System.Text;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting;

/// <summary>What was found, in the order in which a reader should meet it.</summary>
public sealed record Findings
{
    /// <summary>Makes a list of findings.</summary>
    public Findings(params IReadOnlyList<Finding> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        Items = [.. items];
    }

    /// <summary>The findings.</summary>
    public IReadOnlyList<Finding> Items { get; }

    /// <summary>As an HTML list, the basis of each finding below its sentence.</summary>
    public string ToHtml()
    {
        var html = new StringBuilder("<ol class=\"findings\">\n");
        foreach (var finding in Items)
        {
            html.Append("<li><p>").Append(Html.Sentence(finding.Sentence)).Append("</p>");
            foreach (var note in finding.Notes) html.Append("<p class=\"note\">").Append(Html.Sentence(note)).Append("</p>");
            if (finding.Basis() is { Length: > 0 } basis) html.Append("<p class=\"basis\">").Append(Html.Sentence(basis)).Append("</p>");
            html.Append("</li>\n");
        }

        return html.Append("</ol>\n").ToString();
    }

    /// <summary>As numbered lines.</summary>
    public string ToText()
    {
        var text = new StringBuilder();
        for (var k = 0; k < Items.Count; k++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{k + 1}. {Items[k].Sentence}\n");
            foreach (var note in Items[k].Notes) text.Append("   ").Append(note).Append('\n');
            if (Items[k].Basis() is { Length: > 0 } basis) text.Append("   [").Append(basis).Append("]\n");
        }

        return text.ToString();
    }

    /// <summary>The numbered lines.</summary>
    public override string ToString() => ToText();
}
