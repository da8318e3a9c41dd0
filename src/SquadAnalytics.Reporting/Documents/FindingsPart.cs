namespace SquadAnalytics.Reporting.Documents;

/// <summary>Findings in the running text.</summary>
/// <param name="Findings">The findings.</param>
public sealed record FindingsPart(Findings Findings) : ReportPart
{
    /// <inheritdoc />
    public override string ToHtml() => Findings.ToHtml();
}
