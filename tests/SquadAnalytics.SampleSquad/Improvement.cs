namespace SquadAnalytics.SampleSquad;

/// <summary>The boxer gets steadily faster all season.</summary>
/// <param name="PercentPerWeek">Change of the set time per week in percent; negative is faster.</param>
public sealed record Improvement(double PercentPerWeek) : Story;
