namespace SquadAnalytics.Storage.Tables;

/// <summary>All tables of a logbook, and how its content is read from and written to them.</summary>
internal static class LogbookTables
{
    /// <summary>Every table, those that others refer to first.</summary>
    public static IReadOnlyList<Table> All { get; } =
    [
        AthleteTables.Athletes, AthleteTables.Aliases, AthleteTables.Groups, AthleteTables.Consents,
        ProtocolTables.Protocols, ProtocolTables.Stations, ProtocolTables.Bands, CategoryTables.AgeGroups, CategoryTables.WeightClasses,
        SessionTables.Sessions, SessionTables.SetTimes, SessionTables.StationTimes,
        DayTables.Contexts, DayTables.Events, BlockTables.Blocks, BlockTables.Members,
        DayTables.HealthNotes, HeldTables.Rows, HeldTables.Cells, HeldTables.Problems, HeldTables.Decisions, ExportTables.Exports, ExportTables.Athletes,
    ];

    /// <summary>Files whose bytes are the logbook: the description and every table.</summary>
    public static IReadOnlyList<string> Files { get; } = [DataPackage.File, .. All.Select(table => table.File)];

    /// <summary>The content of the files.</summary>
    /// <exception cref="LogbookContentException">A file holds something that cannot be read.</exception>
    public static LogbookContent Read(IReadOnlyDictionary<string, byte[]> files)
    {
        var source = new TableSource(files);
        var name = DataPackage.ReadTitle(files, source);
        var athletes = AthleteTables.Read(source);
        var protocols = ProtocolTables.Read(source);
        var byId = athletes.ToDictionary(athlete => athlete.Id, StringComparer.Ordinal);
        var sessions = SessionTables.Read(source, athletes, protocols);
        var contexts = DayTables.ReadContexts(source, byId);
        var events = DayTables.ReadEvents(source, byId);
        var blocks = BlockTables.Read(source, byId);
        var ageGroups = CategoryTables.ReadAgeGroups(source);
        var weightClasses = CategoryTables.ReadWeightClasses(source);
        var notes = DayTables.ReadHealthNotes(source, byId);
        var held = HeldTables.Read(source);
        var exports = ExportTables.Read(source);
        source.Check();
        var squad = new Squad(name, athletes, protocols, sessions) { Contexts = contexts, Events = events, Blocks = blocks, AgeGroups = ageGroups, WeightClasses = weightClasses };
        return new LogbookContent(squad, notes, held, exports);
    }

    /// <summary>Name and bytes of the files that differ between two contents; of all where there was none before.</summary>
    public static IReadOnlyDictionary<string, byte[]> Write(LogbookContent content, LogbookContent? before)
    {
        var sink = new FileSink();
        var categories = Differs(content.Squad.AgeGroups, before?.Squad.AgeGroups) || Differs(content.Squad.WeightClasses, before?.Squad.WeightClasses);

        // A logbook from before there were categories does not describe them yet.
        if (content.Squad.Name != before?.Squad.Name || categories) sink.Add(DataPackage.File, DataPackage.Write(content.Squad.Name));
        if (Differs(content.Squad.Athletes, before?.Squad.Athletes)) AthleteTables.Write(content.Squad.Athletes, sink);
        if (Differs(content.Squad.Protocols, before?.Squad.Protocols)) ProtocolTables.Write(content.Squad.Protocols, sink);
        if (Differs(content.Squad.Sessions, before?.Squad.Sessions)) SessionTables.Write(content.Squad.Sessions, sink);
        if (Differs(content.Squad.Contexts, before?.Squad.Contexts)) DayTables.WriteContexts(content.Squad.Contexts, sink);
        if (Differs(content.Squad.Events, before?.Squad.Events)) DayTables.WriteEvents(content.Squad.Events, sink);
        if (Differs(content.Squad.Blocks, before?.Squad.Blocks)) BlockTables.Write(content.Squad.Blocks, sink);
        if (categories) CategoryTables.WriteAgeGroups(content.Squad.AgeGroups, sink);
        if (categories) CategoryTables.WriteWeightClasses(content.Squad.WeightClasses, sink);
        if (Differs(content.HealthNotes, before?.HealthNotes)) DayTables.WriteHealthNotes(content.HealthNotes, sink);
        if (Differs(content.HeldRows, before?.HeldRows)) HeldTables.Write(content.HeldRows, sink);
        if (Differs(content.Exports, before?.Exports)) ExportTables.Write(content.Exports, sink);
        return sink.Files;
    }

    private static bool Differs<T>(IReadOnlyList<T> now, IReadOnlyList<T>? before)
        where T : class => before is null || now.Count != before.Count || now.Where((item, index) => !ReferenceEquals(item, before[index])).Any();
}
