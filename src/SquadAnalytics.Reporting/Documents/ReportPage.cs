using System.Text;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Writes a report as one page.</summary>
internal static class ReportPage
{
    private static readonly string Style = PageFrame.Style("report.css");

    public static string Write(ReportDocument report) =>
        PageFrame.Write(report.Title, Style, $"<a class=\"skip\" href=\"#findings\">Skip to the findings</a>\n{Body(report)}", "light dark");

    /// <summary>What the page shows.</summary>
    public static string Body(ReportDocument report)
    {
        var html = new StringBuilder("<header>\n");
        if (report.DataNote is { } note) html.Append("<p class=\"data-note\">").Append(Html.Sentence(note)).Append("</p>\n");
        html.Append("<h1>").Append(Html.Sentence(report.Title)).Append("</h1>\n<p class=\"question\">").Append(Html.Sentence(report.Question)).Append("</p>\n");
        if (report.Subject is { } subject) html.Append("<p class=\"subject\">").Append(Html.Sentence(subject)).Append("</p>\n");
        html.Append("</header>\n<main>\n");
        FindingsFirst(html, report);
        foreach (var part in report.Parts) html.Append(part.ToHtml());
        html.Append("</main>\n");
        Foot(html, report.Foot);
        return html.ToString();
    }

    private static void FindingsFirst(StringBuilder html, ReportDocument report)
    {
        html.Append("<section id=\"findings\" class=\"answer\" aria-labelledby=\"findings-heading\">\n<h2 id=\"findings-heading\">Findings</h2>\n");
        html.Append(report.Findings.Count > 0 ? new Findings(report.Findings).ToHtml() : "<p>This report states no findings.</p>\n");
        html.Append("</section>\n");
    }

    private static void Foot(StringBuilder html, ReportFoot foot)
    {
        html.Append("<footer>\n<section aria-labelledby=\"cautions-heading\">\n<h2 id=\"cautions-heading\">Cautions</h2>\n<dl class=\"cautions\">\n");
        foreach (var caution in foot.Cautions)
        {
            var source = caution.Source is { } text ? $" <span class=\"source\">({Html.Escape(text)})</span>" : "";
            html.Append("<div><dt>").Append(Html.Escape(caution.Topic)).Append("</dt><dd>").Append(Html.Sentence(caution.Text)).Append(source).Append("</dd></div>\n");
        }

        html.Append("</dl>\n</section>\n");
        if (foot.References.Count > 0)
        {
            html.Append("<section aria-labelledby=\"references-heading\">\n<h2 id=\"references-heading\">References</h2>\n<ul class=\"references\">\n");
            foreach (var reference in foot.References) html.Append("<li>").Append(Html.Escape(reference)).Append("</li>\n");
            html.Append("</ul>\n</section>\n");
        }

        html.Append("<section aria-labelledby=\"provenance-heading\">\n<h2 id=\"provenance-heading\">How to make this report again</h2>\n<dl class=\"provenance\">\n");
        foreach (var parameter in foot.Parameters) Entry(html, parameter.Name, parameter.Value);
        if (foot.DataFingerprint is { } fingerprint) Entry(html, "data (SHA-256)", fingerprint);
        Entry(html, "versions", string.Join(", ", foot.Versions));
        if (foot.MadeAtText is { } madeAt) Entry(html, "made", madeAt);
        if (foot.Took is { } took) Entry(html, "took", $"{NumberFormat.Fixed(took.TotalSeconds, 2)} s");
        html.Append("</dl>\n</section>\n</footer>\n");
    }

    private static void Entry(StringBuilder html, string name, string value) =>
        html.Append("<div><dt>").Append(Html.Escape(name)).Append("</dt><dd>").Append(Html.Escape(value)).Append("</dd></div>\n");
}
