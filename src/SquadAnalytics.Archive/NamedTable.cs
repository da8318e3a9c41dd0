namespace SquadAnalytics.Archive;

/// <summary>A table that a query reads.</summary>
/// <param name="Name">The name, as it stands in the query.</param>
/// <param name="Place">Where it stands first, or null where that is not known.</param>
public sealed record NamedTable(string Name, QueryPlace? Place);
