using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Where a run stopped, and why.</summary>
/// <param name="Place">Where it stopped: <c>cell 4, line 2</c>.</param>
/// <param name="Message">Why, in words.</param>
public sealed record FailurePart(string Place, string Message) : ReportPart
{
    /// <inheritdoc />
    public override string ToHtml() =>
        $"<div class=\"failure\" role=\"note\"><p><strong>Stopped at {Html.Escape(Place)}.</strong></p><pre>{Html.Escape(Message)}</pre></div>\n";
}
