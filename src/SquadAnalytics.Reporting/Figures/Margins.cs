namespace SquadAnalytics.Reporting.Figures;

/// <summary>Room around the marks of a chart, in units.</summary>
internal readonly record struct Margins(float Left, float Right, float Bottom, float Top);
