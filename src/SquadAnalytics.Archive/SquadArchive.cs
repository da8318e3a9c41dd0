using System.Globalization;
using System.Text.RegularExpressions;
using DuckDB.NET.Data;
using SquadAnalytics.Frames;

namespace SquadAnalytics.Archive;

/// <summary>
/// Answers SQL about one squad or many, in this process. The tables are those of <see cref="SquadFrames"/>, each with one more column,
/// <c>squad</c>: ids are unique within a squad, so joins over several squads name it too. Health notes are not there.
/// </summary>
/// <remarks>
/// The database is in memory and closed off: no extension, no file, no network, and settings that cannot be changed any more.
/// Only queries are run, and only functions that compute. The logbook itself is never written. Not for use by several threads at once.
/// </remarks>
public sealed partial class SquadArchive : IDisposable
{
    private readonly ArchiveLimits _limits;
    private readonly Lazy<ArchiveDatabase> _database;
    private readonly List<Squad> _squads = [];
    private readonly Dictionary<string, int> _filled = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _named = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Makes an archive without squads. The database itself is only started by the first query, or by <see cref="Start"/>.</summary>
    /// <param name="limits">What queries may use up; null for the usual limits.</param>
    public SquadArchive(ArchiveLimits? limits = null)
        : this(limits, ArchiveDatabase.Doors)
    {
    }

    internal SquadArchive(ArchiveLimits? limits, IReadOnlyList<string> doors)
    {
        _limits = limits ?? new ArchiveLimits();
        _database = new Lazy<ArchiveDatabase>(() => StartTables(new ArchiveDatabase(_limits, doors)));
    }

    /// <summary>The tables of every squad.</summary>
    public static IReadOnlyList<string> SquadTables => SquadFrames.Names;

    /// <summary>All tables: those of the squads, and the frames that were put beside them.</summary>
    public IReadOnlyList<string> Tables => [.. SquadTables, .. _named.Order(StringComparer.Ordinal)];

    /// <summary>Memory that the database uses, in bytes.</summary>
    internal long DatabaseBytes => Convert.ToInt64(Database.Scalar("SELECT sum(memory_usage_bytes)::BIGINT FROM duckdb_memory()"), CultureInfo.InvariantCulture);

    internal ArchiveDatabase Database => _database.Value;

    /// <summary>Starts the database now, which the first query would do otherwise and which takes as long as many queries.</summary>
    public void Start() => _ = Database;

    /// <summary>Adds a squad. Each of its tables is loaded by the first query that names it.</summary>
    /// <param name="squad">The squad; its name stands in the column <c>squad</c>.</param>
    /// <exception cref="ArgumentException">There is a squad of that name.</exception>
    public void Add(Squad squad)
    {
        ArgumentNullException.ThrowIfNull(squad);
        if (_squads.Exists(other => other.Name == squad.Name)) throw new ArgumentException($"There is a squad {squad.Name} already; rows of the two could not be told apart.", nameof(squad));
        _squads.Add(squad);
    }

    /// <summary>Loads tables of many squads at once, one squad after another, so that no more than one has to be in memory.</summary>
    /// <param name="squads">The squads, read once; their names must differ.</param>
    /// <param name="tables">The tables to load; of the others these squads have no rows.</param>
    public void Load(IEnumerable<Squad> squads, params IReadOnlyList<string> tables)
    {
        ArgumentNullException.ThrowIfNull(squads);
        foreach (var squad in squads)
        {
            foreach (var table in tables) Database.Append(table, SquadFrames.Of(squad, table), squad.Name);
        }

        Database.Pack();
    }

    /// <summary>Puts a frame beside the squads' tables, in the place of an earlier one of that name.</summary>
    /// <param name="name">The table's name: letters, digits and underscores, not beginning with a digit.</param>
    /// <param name="frame">The frame.</param>
    /// <exception cref="ArgumentException">The name is not of that form, or is one of the squads' tables.</exception>
    public void Put(string name, Frame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        CheckName(name);
        if (frame.Columns.Count == 0) throw new ArgumentException($"{name} has no columns.", nameof(frame));
        Database.Create(name, frame, withSquad: false);
        Database.Append(name, frame, squad: null);
        _named.Add(name);
    }

    /// <summary>Checks that a frame may have a name.</summary>
    /// <param name="name">The name.</param>
    /// <exception cref="ArgumentException">It is not of letters, digits and underscores, or is one of the squads' tables.</exception>
    public static void CheckName(string name)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        if (!PlainName().IsMatch(name)) throw new ArgumentException($"A table cannot be named '{name}': use letters, digits and underscores, and begin with a letter.", nameof(name));
        if (SquadTables.Contains(name, StringComparer.OrdinalIgnoreCase)) throw new ArgumentException($"{name} is a table of the logbook; choose another name.", nameof(name));
    }

    /// <summary>Reads a query without running it.</summary>
    /// <param name="sql">The query.</param>
    /// <exception cref="QueryException">It is not one query, cannot be read, or calls what it may not.</exception>
    public QueryReading Read(string sql)
    {
        ArgumentNullException.ThrowIfNull(sql);
        return QuerySyntax.Read(sql, (string)Database.Scalar("SELECT json_serialize_sql($1::VARCHAR)", sql)!);
    }

    /// <summary>Answers a query.</summary>
    /// <param name="sql">One query: <c>SELECT</c>, <c>WITH</c>, <c>FROM</c>, <c>VALUES</c>, <c>DESCRIBE</c>, <c>SUMMARIZE</c>, or <c>PIVOT</c> with its values listed.</param>
    /// <param name="parameters">The values that it names, as <c>$athlete</c>.</param>
    /// <param name="cancellationToken">Stops the query.</param>
    /// <returns>The result, a column of which that has the name of an earlier one gets a number behind it.</returns>
    /// <exception cref="QueryException">The query cannot be answered; the exception says why and where.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public Frame Query(string sql, IReadOnlyList<QueryParameter>? parameters = null, CancellationToken cancellationToken = default)
    {
        var reading = Read(sql);
        foreach (var table in reading.Tables) Fill(table);
        using var command = Database.Command(sql);
        foreach (var name in reading.Parameters) command.Parameters.Add(Bound(name, parameters ?? []));
        using var stop = cancellationToken.Register(command.Cancel);
        try
        {
            using var reader = command.ExecuteReader();
            return Gather(reader, cancellationToken);
        }
        catch (DuckDBException) when (cancellationToken.IsCancellationRequested)
        {
            throw new OperationCanceledException(cancellationToken);
        }
        catch (DuckDBException error)
        {
            throw DatabaseMessage.Read(error);
        }
    }

    /// <summary>Ends the database and gives its memory free.</summary>
    public void Dispose()
    {
        if (_database.IsValueCreated) _database.Value.Dispose();
    }

    private static ArchiveDatabase StartTables(ArchiveDatabase database)
    {
        var empty = new Squad("none", [], [], []);
        foreach (var table in SquadTables) database.Create(table, SquadFrames.Of(empty, table), withSquad: true);
        return database;
    }

    private void Fill(NamedTable named)
    {
        if (_named.Contains(named.Name)) return;
        var table = SquadTables.FirstOrDefault(table => string.Equals(table, named.Name, StringComparison.OrdinalIgnoreCase))
            ?? throw new QueryException($"There is no table {named.Name}; there are {string.Join(", ", Tables)}.", named.Place);
        var filled = _filled.GetValueOrDefault(table);
        foreach (var squad in _squads.Skip(filled)) Database.Append(table, SquadFrames.Of(squad, table), squad.Name);
        _filled[table] = _squads.Count;
    }

    private static DuckDBParameter Bound(string name, IReadOnlyList<QueryParameter> parameters)
    {
        var given = parameters.FirstOrDefault(parameter => parameter.Name == name) ?? throw new QueryException($"The query asks for ${name}, and no value of that name was given.");
        return new DuckDBParameter(name, given.Value switch
        {
            Seconds seconds => seconds.Value,
            Percent percent => percent.Value,
            null or string or bool or int or long or double or float or decimal or DateOnly or DateTime => given.Value,
            _ => throw new QueryException($"${name} is a {given.Value.GetType().Name}; a query takes text, numbers, dates, and true or false."),
        });
    }

    private Frame Gather(DuckDBDataReader reader, CancellationToken cancellationToken)
    {
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        ResultColumn[] columns = [.. Enumerable.Range(0, reader.FieldCount).Select(at => new ResultColumn(Unused(reader.GetName(at), names), at, reader.GetFieldType(at)))];
        for (var rows = 1; reader.Read(); rows++)
        {
            if (rows > _limits.Rows) throw new QueryException(string.Create(CultureInfo.InvariantCulture, $"The query returns more than {_limits.Rows} rows; group them, or end it with LIMIT."));
            if (rows % 1024 == 0) cancellationToken.ThrowIfCancellationRequested();
            foreach (var column in columns) column.Take(reader);
        }

        return new Frame([.. columns.Select(static column => column.ToColumn())]);
    }

    private static string Unused(string name, HashSet<string> taken)
    {
        var free = name;
        for (var number = 2; !taken.Add(free); number++) free = string.Create(CultureInfo.InvariantCulture, $"{name}_{number}");
        return free;
    }

    [GeneratedRegex("^[A-Za-z_][A-Za-z0-9_]{0,62}$", RegexOptions.CultureInvariant)]
    private static partial Regex PlainName();
}
