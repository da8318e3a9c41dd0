using SquadAnalytics.Reporting.Figures;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>A few parts of a report as a page of their own, to be shown in a frame; it makes no outside request and runs nothing.</summary>
public static class FragmentPage
{
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'";
    private static readonly string Bare = EmbeddedFile.ReadText("report.css") + "body,main{background:none;max-width:none;padding:0}main{margin:0;padding:1px 0}pre{white-space:pre-wrap;overflow-wrap:anywhere}.table caption::before,figcaption::before{content:none}main>:first-child{margin-top:0}main>:last-child{margin-bottom:0}";
    private static readonly string WithFonts = Bare.Replace("/*FONT-FACES*/", BundledFont.FontFaces, StringComparison.Ordinal);

    /// <summary>The page.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="parts">The parts in reading order.</param>
    public static string Write(string title, IReadOnlyList<ReportPart> parts)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(parts);
        var body = string.Concat(parts.Select(static part => part.ToHtml()));

        // Only figures are drawn to the measure of the font, which is larger than most of what cells show.
        var style = body.Contains("<svg", StringComparison.Ordinal) ? WithFonts : Bare;
        return $"<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<meta http-equiv=\"Content-Security-Policy\" content=\"{Policy}\"/>\n<meta name=\"color-scheme\" content=\"light dark\"/>\n"
            + $"<title>{Html.Escape(title)}</title>\n<style>{style}</style>\n</head>\n<body>\n<main>\n{body}</main>\n</body>\n</html>\n";
    }
}
