namespace SquadAnalytics.Import;

/// <summary>What settling the names brought.</summary>
/// <param name="New">Athletes who are not in the squad, in the order met.</param>
/// <param name="Confirmed">Athletes of the squad with the spellings that a person confirmed.</param>
internal sealed record SettledNames(IReadOnlyList<Athlete> New, IReadOnlyList<Athlete> Confirmed);
