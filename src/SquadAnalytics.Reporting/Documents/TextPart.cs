namespace SquadAnalytics.Reporting.Documents;

/// <summary>Plain text as a cell printed it.</summary>
/// <param name="Text">The text; shown as it is.</param>
public sealed record TextPart(string Text) : ReportPart
{
    /// <inheritdoc />
    public override string ToHtml() => FragmentSanitizer.AsText(Text);
}
