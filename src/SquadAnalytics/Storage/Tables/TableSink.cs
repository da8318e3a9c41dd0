namespace SquadAnalytics.Storage.Tables;

/// <summary>Where the rows of tables go.</summary>
internal abstract class TableSink
{
    /// <summary>Takes a table with one row for each item.</summary>
    public abstract void Write<T>(Table table, IEnumerable<T> items, Action<TableWriter, T> row);
}
