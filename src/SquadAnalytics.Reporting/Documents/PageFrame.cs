using System.Security.Cryptography;
using System.Text;
using SquadAnalytics.Reporting.Figures;
using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>What every page is wrapped in: its policy allows its own style sheet, by its hash, embedded fonts and pictures, and nothing else.</summary>
internal static class PageFrame
{
    /// <summary>The style sheet that comes along under a name, with the bundled typeface in it.</summary>
    public static string Style(string name) => EmbeddedFile.ReadText(name).Replace("/*FONT-FACES*/", BundledFont.FontFaces, StringComparison.Ordinal);

    /// <summary>The whole page.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="style">Its style sheet.</param>
    /// <param name="body">What it shows, as HTML.</param>
    /// <param name="colorSchemes">The colour schemes that the style sheet knows.</param>
    public static string Write(string title, string style, string body, string colorSchemes = "light") => new StringBuilder()
        .Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'sha256-")
        .Append(Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(style))))
        .Append("'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'\"/>\n")
        .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<meta name=\"color-scheme\" content=\"").Append(colorSchemes).Append("\"/>\n<meta name=\"referrer\" content=\"no-referrer\"/>\n")
        .Append("<title>").Append(Html.Escape(title)).Append("</title>\n<style>").Append(style).Append("</style>\n</head>\n<body>\n").Append(body).Append("</body>\n</html>\n")
        .ToString();
}
