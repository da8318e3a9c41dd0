namespace SquadAnalytics.Reporting.Figures;

/// <summary>The chance of telling a change with a number of tests.</summary>
/// <param name="Tests">Number of tests on each side of the comparison.</param>
/// <param name="Power">Probability of telling it, from 0 to 1.</param>
public sealed record PowerAt(int Tests, double Power);
