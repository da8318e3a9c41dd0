using SquadAnalytics.Internals;
using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Frames;

/// <summary>A squad's records and the computed measures of its sessions as tables, with the columns of the logbook's files.</summary>
/// <remarks>
/// Health notes, imported rows that await a decision, consents and other spellings of names are not among them. Beside the tables of the
/// logbook stand <c>session_measures</c>, one row per session, and <c>set_clock</c>, one row per set on the rolling clock; their columns
/// say in <see cref="FrameColumn.Description"/> how they are computed.
/// </remarks>
public static class SquadFrames
{
    private static readonly IReadOnlyList<SquadTable> All =
    [
        new(AthleteTables.Athletes, static (squad, sink) => AthleteTables.Write(squad.Athletes, sink)),
        new(AthleteTables.Groups, static (squad, sink) => AthleteTables.Write(squad.Athletes, sink)),
        new(ProtocolTables.Protocols, static (squad, sink) => ProtocolTables.Write(squad.Protocols, sink)),
        new(ProtocolTables.Stations, static (squad, sink) => ProtocolTables.Write(squad.Protocols, sink)),
        new(ProtocolTables.Bands, static (squad, sink) => ProtocolTables.Write(squad.Protocols, sink)),
        new(CategoryTables.AgeGroups, static (squad, sink) => CategoryTables.WriteAgeGroups(squad.AgeGroups, sink)),
        new(CategoryTables.WeightClasses, static (squad, sink) => CategoryTables.WriteWeightClasses(squad.WeightClasses, sink)),
        new(SessionTables.Sessions, static (squad, sink) => SessionTables.Write(squad.Sessions, sink)),
        new(SessionTables.SetTimes, static (squad, sink) => SessionTables.Write(squad.Sessions, sink)),
        new(SessionTables.StationTimes, static (squad, sink) => SessionTables.Write(squad.Sessions, sink)),
        new(DayTables.Contexts, static (squad, sink) => DayTables.WriteContexts(squad.Contexts, sink)),
        new(DayTables.Events, static (squad, sink) => DayTables.WriteEvents(squad.Events, sink)),
        new(BlockTables.Blocks, static (squad, sink) => BlockTables.Write(squad.Blocks, sink)),
        new(BlockTables.Members, static (squad, sink) => BlockTables.Write(squad.Blocks, sink)),
        new(MeasureTables.Sessions, MeasureTables.WriteSessions),
        new(MeasureTables.Clock, MeasureTables.WriteClock),
    ];

    /// <summary>The names of the tables, those that others refer to first.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. All.Select(static table => table.Name)];

    /// <summary>One table of a squad.</summary>
    /// <param name="squad">The squad.</param>
    /// <param name="table">The table's name, one of <see cref="Names"/>.</param>
    /// <exception cref="ArgumentException">There is no such table.</exception>
    public static Frame Of(Squad squad, string table)
    {
        ArgumentNullException.ThrowIfNull(squad);
        var known = Find(table);
        var sink = new FrameSink(known.Table);
        known.Write(squad, sink);
        return sink.Frame!;
    }

    /// <summary>What a table holds, in words.</summary>
    /// <param name="table">The table's name, one of <see cref="Names"/>.</param>
    /// <exception cref="ArgumentException">There is no such table.</exception>
    public static string Describe(string table) => Find(table).Table.Description;

    private static SquadTable Find(string table) =>
        All.FirstOrDefault(one => string.Equals(one.Name, Require.Text(table), StringComparison.OrdinalIgnoreCase))
        ?? throw new ArgumentException($"There is no table {table}; there are {string.Join(", ", Names)}.", nameof(table));

    private sealed record SquadTable(Table Table, Action<Squad, TableSink> Write)
    {
        /// <summary>The name of the file, with underscores, as names in queries are written.</summary>
        public string Name { get; } = Table.Name.Replace('-', '_');
    }
}
