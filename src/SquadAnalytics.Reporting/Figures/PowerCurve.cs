namespace SquadAnalytics.Reporting.Figures;

/// <summary>A power curve for one size of change.</summary>
/// <param name="Name">What change it is for: <c>4 s</c>.</param>
/// <param name="Points">The points by number of tests.</param>
public sealed record PowerCurve(string Name, IReadOnlyList<PowerAt> Points);
