namespace SquadAnalytics.Reporting;

/// <summary>One caution that goes with the test or with every report.</summary>
/// <param name="Topic">What it is about, in a word or two.</param>
/// <param name="Text">The caution, in full sentences.</param>
/// <param name="Source">Where it comes from, or null.</param>
public sealed record Caution(string Topic, string Text, string? Source = null);
