namespace SquadAnalytics.Reporting.Figures;

/// <summary>An athlete's expected rank and the ranks that the data leave possible.</summary>
/// <param name="Label">The athlete as labelled in this report.</param>
/// <param name="Expected">Expected rank, 1 is fastest; seldom a whole number.</param>
/// <param name="Best">Best rank of the interval.</param>
/// <param name="Worst">Worst rank of the interval.</param>
public sealed record RankRange(string Label, double Expected, int Best, int Worst);
