using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>A figure with its caption.</summary>
/// <param name="Figure">The figure.</param>
public sealed record FigurePart(Figure Figure) : ReportPart
{
    /// <inheritdoc />
    public override string ToHtml() => Figure.ToHtml();
}
