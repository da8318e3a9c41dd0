namespace SquadAnalytics.Reporting.Figures;

/// <summary>A test on a control chart.</summary>
/// <param name="Date">Its date.</param>
/// <param name="Value">The total, or the residual from the trend, in seconds.</param>
/// <param name="IsBaseline">Whether the limits rest on it.</param>
/// <param name="Signal">Which rule it broke, in words; null for none.</param>
public sealed record ControlPoint(DateOnly Date, Seconds Value, bool IsBaseline, string? Signal = null);
