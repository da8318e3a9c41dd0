namespace SquadAnalytics.SampleSquad;

/// <summary>A generated squad and the truth behind it.</summary>
/// <param name="Squad">What a coach would see.</param>
/// <param name="HealthNotes">Health notes, which are kept apart.</param>
/// <param name="Truth">What was built in.</param>
public sealed record GeneratedSquad(Squad Squad, IReadOnlyList<HealthNote> HealthNotes, SampleTruth Truth);
