namespace SquadAnalytics.Reporting.Figures;

/// <summary>A number on a day.</summary>
/// <param name="Date">The day.</param>
/// <param name="Value">The number, in the unit that the figure names.</param>
public sealed record DatedValue(DateOnly Date, double Value);
