namespace SquadAnalytics.Storage.Tables;

/// <summary>A column whose values are found in the column of the same meaning of another table.</summary>
internal sealed record ForeignKey(Column Column, string Table, string TableColumn);
