namespace SquadAnalytics.Reporting.Documents;

/// <summary>HTML from elsewhere (prose made from Markdown, what a cell showed); goes through <see cref="FragmentSanitizer"/>.</summary>
/// <param name="Html">The fragment; it need not be trusted.</param>
public sealed record FragmentPart(string Html) : ReportPart
{
    /// <inheritdoc />
    public override string ToHtml() => FragmentSanitizer.Sanitize(Html);
}
