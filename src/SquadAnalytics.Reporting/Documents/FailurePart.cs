using SquadAnalytics.Reporting.Internals;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Where a run stopped, and why.</summary>
/// <param name="Place">Where it stopped: <c>cell 4, line 2</c>.</param>
/// <param name="Message">Why, in words.</param>
public sealed record FailurePart(string Place, string Message) : ReportPart
{
    /// <summary>The code at that place, or null.</summary>
    public string? Excerpt { get; init; }

    /// <inheritdoc />
    public override string ToHtml() =>
        $"<div class=\"failure\" role=\"note\"><p><strong>{Html.Escape(Message)}</strong></p><p>Stopped at {Html.Escape(Place)}.</p>{(Excerpt is null ? "" : $"<pre>{Html.Escape(Excerpt)}</pre>")}</div>\n";
}
