using System.Collections;
using Microsoft.Data.Analysis;
using SquadAnalytics.Archive;
using SquadAnalytics.Frames;
using SquadAnalytics.Notebooks.Scripting;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Notebooks.Sql;

/// <summary>
/// What a query can name: the tables of the logbook that the C# cells know as <c>logbook</c> (or of all in <c>logbooks</c>), their frames
/// and sequences of records as tables, and their single values as <c>$name</c>. Everything is looked up when a query runs.
/// </summary>
internal sealed class SqlScope(ICellValues values) : IDisposable
{
    /// <summary>The name by which cells know several logbooks at once.</summary>
    public const string LogbooksName = "logbooks";

    private readonly Dictionary<string, object> _put = new(StringComparer.OrdinalIgnoreCase);
    private Task<SquadArchive>? _started;
    private SquadArchive? _archive;
    private IReadOnlyList<Squad> _squads = [];

    /// <summary>Starts a database on another core, for a query that will come.</summary>
    public void Begin() => _started ??= Task.Run(static () =>
    {
        var archive = new SquadArchive();
        archive.Start();
        return archive;
    });

    /// <summary>Answers a query.</summary>
    /// <exception cref="QueryException">It cannot be answered.</exception>
    public Frame Query(string sql, CancellationToken cancellationToken)
    {
        var archive = Archive();
        var reading = archive.Read(sql);
        foreach (var table in reading.Tables) PutFromCells(archive, table);
        return archive.Query(sql, [.. reading.Parameters.Select(Value).OfType<QueryParameter>()], cancellationToken);
    }

    /// <summary>Checks a query without running it.</summary>
    /// <exception cref="QueryException">It cannot be read.</exception>
    public void Check(string sql) => Archive().Read(sql);

    /// <summary>Checks that a result may have a name.</summary>
    /// <exception cref="ArgumentException">It may not.</exception>
    public static void CheckName(string name)
    {
        SquadArchive.CheckName(name);
        if (name is Hosting.Prelude.LogbookName or LogbooksName) throw new ArgumentException($"{name} is the name of the logbook itself; choose another.", nameof(name));
    }

    /// <summary>The tables that queries can name, each as an empty or filled frame.</summary>
    public IReadOnlyList<KeyValuePair<string, Frame>> Frames()
    {
        var empty = new Squad("none", [], [], []);
        var own = values.All().Where(static pair => pair.Value is Frame).Select(static pair => KeyValuePair.Create(pair.Key, (Frame)pair.Value!));
        return [.. SquadFrames.Names.Select(name => KeyValuePair.Create(name, SquadFrames.Of(empty, name))), .. own];
    }

    public void Dispose()
    {
        _archive?.Dispose();
        _ = _started?.ContinueWith(static started => started.Result.Dispose(), TaskContinuationOptions.OnlyOnRanToCompletion);
    }

    /// <summary>The database of the logbooks as they are now; a new one where they changed.</summary>
    private SquadArchive Archive()
    {
        var squads = Squads();
        if (_archive is not null && squads.SequenceEqual(_squads, ReferenceEqualityComparer.Instance)) return _archive;
        _archive?.Dispose();
        _put.Clear();
        _archive = Fresh();
        foreach (var squad in squads) _archive.Add(squad);
        _squads = squads;
        return _archive;
    }

    private SquadArchive Fresh()
    {
        if (Interlocked.Exchange(ref _started, null) is { } started) return started.GetAwaiter().GetResult();
        return new SquadArchive();
    }

    private IReadOnlyList<Squad> Squads()
    {
        if (values.TryGet(LogbooksName, out IEnumerable<Logbook>? several) && several is not null) return [.. several.Select(static logbook => logbook.Squad)];
        return values.TryGet(Hosting.Prelude.LogbookName, out Logbook? one) && one is not null ? [one.Squad] : [];
    }

    private void PutFromCells(SquadArchive archive, NamedTable table)
    {
        if (SquadArchive.SquadTables.Contains(table.Name, StringComparer.OrdinalIgnoreCase)) return;
        if (!values.TryGet(table.Name, out object? value) || value is null) return;
        if (_put.TryGetValue(table.Name, out var known) && ReferenceEquals(known, value) && value is Frame) return;
        archive.Put(table.Name, AsFrame(table, value));
        _put[table.Name] = value;
    }

    private static Frame AsFrame(NamedTable table, object value)
    {
        try
        {
            return value switch
            {
                Frame frame => frame,
                DataFrame frame => Frame.Of(frame),
                string => throw new QueryException($"{table.Name} is a text; write ${table.Name} to use it as a value.", table.Place),
                IEnumerable records => Frame.Of(records.Cast<object?>()),
                _ => throw new QueryException($"{table.Name} is a {value.GetType().Name} and no table; write ${table.Name} to use a single value.", table.Place),
            };
        }
        catch (ArgumentException error)
        {
            throw new QueryException($"{table.Name} cannot be used as a table: {error.Message}", table.Place, error);
        }
    }

    private QueryParameter? Value(string name) => values.TryGet(name, out object? value) ? new QueryParameter(name, value) : null;
}
