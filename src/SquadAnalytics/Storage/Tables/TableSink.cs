namespace SquadAnalytics.Storage.Tables;

/// <summary>Collects the bytes of tables to be written.</summary>
internal sealed class TableSink
{
    private readonly Dictionary<string, byte[]> _files = new(StringComparer.Ordinal);

    /// <summary>File name and bytes of each table written.</summary>
    public IReadOnlyDictionary<string, byte[]> Files => _files;

    public void Write<T>(Table table, IEnumerable<T> items, Action<TableWriter, T> row) => Add(table.File, TableWriter.Write(table, items, row));

    public void Add(string file, byte[] content) => _files[file] = content;
}
