using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>The code behind a result, folded away on screen and left out in print.</summary>
/// <param name="Language">Language of the code: <c>C#</c>, <c>SQL</c>.</param>
/// <param name="Code">The code as it ran.</param>
public sealed record WorkingPart(string Language, string Code) : ReportPart
{
    /// <inheritdoc />
    public override string ToHtml() =>
        $"<details class=\"working\"><summary>Working ({Html.Escape(Language)})</summary><pre><code>{Html.Escape(Code)}</code></pre></details>\n";
}
