using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting;

/// <summary>Code in another language that does the same again, to be copied.</summary>
/// <param name="Language">The language: <c>R</c>.</param>
/// <param name="Code">The code, lines separated by line feeds.</param>
public sealed record Listing(string Language, string Code)
{
    /// <summary>As preformatted HTML.</summary>
    public string ToHtml() => $"<pre><code>{Html.Escape(Code)}</code></pre>\n";

    /// <summary>The code.</summary>
    public override string ToString() => Code;
}
