namespace SquadAnalytics.Storage.Tables;

/// <summary>The bytes of all tables at one moment, and the problems met while reading them.</summary>
internal sealed class TableSource(IReadOnlyDictionary<string, byte[]> files)
{
    private readonly List<CellProblem> _problems = [];

    public List<T> Read<T>(Table table, Func<TableReader, T> build)
    {
        if (files.TryGetValue(table.File, out var content)) return TableReader.ReadAll(table, content, _problems, build);
        if (table.IsOptional) return [];
        _problems.Add(new CellProblem(table.File, 1, "is missing from the logbook folder", "the file put back, or at least its header line " + string.Join(',', table.Columns.Select(column => column.Name))));
        return [];
    }

    public void Add(CellProblem problem) => _problems.Add(problem);

    /// <summary>Reads a table that others refer to: they are not looked at while it has problems, since these would only be repeated.</summary>
    public List<T> ReadFirst<T>(Table table, Func<TableReader, T> build)
    {
        var rows = Read(table, build);
        Check();
        return rows;
    }

    /// <exception cref="LogbookContentException">There are problems.</exception>
    public void Check()
    {
        if (_problems.Count > 0) throw new LogbookContentException(_problems);
    }
}
