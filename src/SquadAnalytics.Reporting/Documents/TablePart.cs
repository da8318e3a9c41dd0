namespace SquadAnalytics.Reporting.Documents;

/// <summary>A table.</summary>
/// <param name="Table">The table.</param>
public sealed record TablePart(Table Table) : ReportPart
{
    /// <inheritdoc />
    public override string ToHtml() => Table.ToHtml();
}
