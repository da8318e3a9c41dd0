namespace SquadAnalytics.Reporting.Figures;

/// <summary>A drawing as SVG marks and the texts over them.</summary>
internal sealed record VectorSheet(string MarksSvg, IReadOnlyList<PlacedText> Texts);
