namespace SquadAnalytics.Storage.Tables;

/// <summary>The bytes of all tables at one moment, and the problems met while reading them.</summary>
internal sealed class TableSource(IReadOnlyDictionary<string, byte[]> files)
{
    private readonly List<CellProblem> _problems = [];

    public IReadOnlyList<CellProblem> Problems => _problems;

    public List<T> Read<T>(Table table, Func<TableReader, T> build)
    {
        if (files.TryGetValue(table.File, out var content)) return TableReader.ReadAll(table, content, _problems, build);
        _problems.Add(new CellProblem(table.File, 1, "is missing from the logbook folder", "the file put back, or at least its header line " + string.Join(',', table.Columns.Select(column => column.Name))));
        return [];
    }

    public void Add(CellProblem problem) => _problems.Add(problem);
}
