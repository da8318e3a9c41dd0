namespace SquadAnalytics.Storage.Tables;

/// <summary>Collects the bytes of tables to be written to files.</summary>
internal sealed class FileSink : TableSink
{
    private readonly Dictionary<string, byte[]> _files = new(StringComparer.Ordinal);

    /// <summary>File name and bytes of each table written.</summary>
    public IReadOnlyDictionary<string, byte[]> Files => _files;

    public override void Write<T>(Table table, IEnumerable<T> items, Action<TableWriter, T> row) => Add(table.File, CsvTableWriter.Write(table, items, row));

    public void Add(string file, byte[] content) => _files[file] = content;
}
