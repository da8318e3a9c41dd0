namespace SquadAnalytics.Standing;

/// <summary>One aggregate of a group that is to be shared: its name, how many athletes stand behind it, and the figure.</summary>
/// <param name="Name">Name of the group.</param>
/// <param name="Athletes">How many athletes it rests on.</param>
/// <param name="Figure">The figure, or why there is none.</param>
public sealed record GroupCell(string Name, int Athletes, Answer<Estimate> Figure);
