namespace SquadAnalytics.Import;

/// <summary>A row that waits for one or more decisions.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Cells">The row as written.</param>
/// <param name="DecisionIds">Ids of the decisions that it waits for; one or more.</param>
public sealed record AwaitingRow(RowPlace Place, IReadOnlyList<RowCell> Cells, IReadOnlyList<string> DecisionIds);
