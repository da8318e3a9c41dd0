namespace SquadAnalytics.Archive;

/// <summary>What a query names, read before it is run.</summary>
/// <param name="Tables">The tables that it reads, apart from those that it defines itself.</param>
/// <param name="Parameters">The values that it asks for, without the dollar sign.</param>
public sealed record QueryReading(IReadOnlyList<NamedTable> Tables, IReadOnlyList<string> Parameters);
