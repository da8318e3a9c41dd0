using System.Net;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Notebooks.Reports;

/// <summary>What a page shows of one cell: its prose as HTML, and what it put out as a small page of its own. Nothing in either can run.</summary>
public static class CellPage
{
    /// <summary>The prose of a Markdown cell as HTML that went through the allow-list of reports; pictures attached to the cell are put in.</summary>
    /// <param name="cell">The cell.</param>
    public static string Prose(NotebookCell cell)
    {
        ArgumentNullException.ThrowIfNull(cell);
        return FragmentSanitizer.Sanitize(MarkdownProse.ToHtml(CellAttachments.PutInto(cell.Source, cell)));
    }

    /// <summary>A page with what a cell put out, for a frame without scripts; null where there is nothing to show.</summary>
    /// <param name="outputs">What it put out.</param>
    /// <param name="title">The page's title.</param>
    public static string? Outputs(CellOutputs outputs, string title)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        var parts = outputs.Outputs.Select(PartOf).OfType<ReportPart>().ToList();
        return parts.Count == 0 ? null : FragmentPage.Write(title, parts);
    }

    /// <summary>One output as a part of a page, or null where it has no form that can be shown.</summary>
    internal static ReportPart? PartOf(CellOutput output)
    {
        if (output is WrittenText text) return new TextPart(text.Text);
        var value = (ShownValue)output;
        if ((value.Form(MimeTypes.Html) ?? value.Form(MimeTypes.Svg)) is { } markup) return new FragmentPart(markup);
        if (value.Form(MimeTypes.Markdown) is { } prose) return new FragmentPart(MarkdownProse.ToHtml(prose));
        if (value.Form(MimeTypes.Png) is { } png) return new FragmentPart($"<img alt=\"picture without a description\" src=\"data:image/png;base64,{WebUtility.HtmlEncode(png)}\"/>");
        return value.Forms.Count > 0 ? new TextPart(value.Form(MimeTypes.Text) ?? value.Forms[0].Content) : null;
    }
}
