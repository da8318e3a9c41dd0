using System.Globalization;
using DuckDB.NET.Data;
using SquadAnalytics.Frames;

namespace SquadAnalytics.Archive;

/// <summary>The database in this process: in memory, locked down, filled from frames.</summary>
internal sealed class ArchiveDatabase : IDisposable
{
    /// <summary>The column that says from which squad a row is.</summary>
    public const string SquadColumn = "squad";

    /// <summary>The settings that close every door; the last one makes them final. Each is tested by what it keeps out.</summary>
    public static readonly IReadOnlyList<string> Doors =
    [
        "SET autoinstall_known_extensions = false",
        "SET autoload_known_extensions = false",
        "SET allow_community_extensions = false",
        "SET temp_directory = ''",
        "SET enable_external_access = false",
        "SET lock_configuration = true",
    ];

    /// <summary>Name of the database that holds the tables.</summary>
    public const string Catalog = "archive";

    // Rows are packed to a tenth and less, and read faster for it; packing takes a moment, so a squad's few thousand rows stay as they are.
    private const int RowsBetweenPacking = 500_000;

    private readonly DuckDBConnection _connection;
    private long _unpacked;

    public ArchiveDatabase(ArchiveLimits limits, IReadOnlyList<string> doors)
    {
        _connection = new DuckDBConnection(string.Create(CultureInfo.InvariantCulture, $"DataSource=:memory:;threads={limits.Threads};memory_limit={limits.MemoryBytes >> 20}MiB"));
        _connection.Open();
        Execute($"ATTACH ':memory:' AS {Catalog} (COMPRESS)");
        Execute($"USE {Catalog}");
        foreach (var door in doors) Execute(door);
    }

    public void Execute(string sql)
    {
        using var command = Command(sql);
        command.ExecuteNonQuery();
    }

    public object? Scalar(string sql, params IReadOnlyList<object> values)
    {
        using var command = Command(sql);
        foreach (var value in values) command.Parameters.Add(new DuckDBParameter(value));
        return command.ExecuteScalar();
    }

    public DuckDBCommand Command(string sql)
    {
        var command = _connection.CreateCommand();
        command.CommandText = sql;
        return command;
    }

    /// <summary>Makes an empty table with the columns of a frame, and one for the squad where wanted.</summary>
    public void Create(string table, Frame frame, bool withSquad)
    {
        var columns = frame.Columns.Select(static column => $"{Quoted(column.Name)} {TypeOf(column.Type)}");
        if (withSquad) columns = columns.Append($"{Quoted(SquadColumn)} VARCHAR");
        Execute($"CREATE OR REPLACE TABLE {Quoted(table)} ({string.Join(", ", columns)})");
    }

    /// <summary>Adds the rows of a frame to a table.</summary>
    public void Append(string table, Frame frame, string? squad)
    {
        var cells = frame.Columns.Select(CellsOf).ToArray();
        using (var appender = _connection.CreateAppender(table))
        {
            for (var at = 0; at < frame.Count; at++)
            {
                var row = appender.CreateRow();
                foreach (var put in cells) put(row, at);
                if (squad is not null) row.AppendValue(squad);
                row.EndRow();
            }
        }

        _unpacked += frame.Count;
        if (_unpacked >= RowsBetweenPacking) Pack();
    }

    /// <summary>Packs the rows that were added since the last time.</summary>
    public void Pack()
    {
        Execute($"CHECKPOINT {Catalog}");
        _unpacked = 0;
    }

    public void Dispose() => _connection.Dispose();

    public static string Quoted(string name) => $"\"{name.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static string TypeOf(FrameType type) => type switch
    {
        FrameType.Number => "DOUBLE",
        FrameType.WholeNumber => "BIGINT",
        FrameType.Date => "DATE",
        FrameType.Moment => "TIMESTAMP",
        FrameType.Flag => "BOOLEAN",
        _ => "VARCHAR",
    };

    private static Action<IDuckDBAppenderRow, int> CellsOf(FrameColumn column)
    {
        switch (column.Type)
        {
            case FrameType.Number:
                var numbers = column.Numbers;
                return (row, at) => row.AppendValue(numbers[at]);
            case FrameType.WholeNumber:
                var integers = column.Integers;
                return (row, at) => row.AppendValue(integers[at]);
            case FrameType.Date:
                var dates = column.Dates;
                return (row, at) => row.AppendValue(dates[at]);
            case FrameType.Moment:
                var moments = column.Moments;
                return (row, at) => row.AppendValue(moments[at]);
            case FrameType.Flag:
                var flags = column.Flags;
                return (row, at) => row.AppendValue(flags[at]);
            default:
                var texts = column.Texts;
                return (row, at) => row.AppendValue(texts[at]);
        }
    }
}
