namespace SquadAnalytics.Reporting.Documents;

/// <summary>A table and the name under which its file is exported.</summary>
/// <param name="Name">The name, without ending.</param>
/// <param name="Table">The table.</param>
public sealed record NamedTable(string Name, Table Table);
