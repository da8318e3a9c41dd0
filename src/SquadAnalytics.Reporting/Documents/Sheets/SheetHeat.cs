namespace SquadAnalytics.Reporting.Documents;

/// <summary>Athletes who start together.</summary>
/// <param name="Number">Number of the heat, from 1.</param>
/// <param name="Labels">What is printed for each athlete, in order.</param>
public sealed record SheetHeat(int Number, IReadOnlyList<string> Labels);
