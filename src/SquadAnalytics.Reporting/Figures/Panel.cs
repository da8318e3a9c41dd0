using ScottPlot;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>A plot and the height it takes.</summary>
internal sealed record Panel(Plot Plot, int Height);
