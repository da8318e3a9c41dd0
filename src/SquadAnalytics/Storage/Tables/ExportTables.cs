namespace SquadAnalytics.Storage.Tables;

/// <summary>What was written from the logbook to places outside its folder.</summary>
internal static class ExportTables
{
    private static readonly Column Id = Column.Text("export_id", "Id, unique in the logbook").Required();
    private static readonly Column At = new Column("written_at", ColumnType.DateTime, "When it was written, UTC").Required();
    private static readonly Column Kind = Column.Text("kind", "What it was").Required();
    private static readonly Column Destination = Column.Text("destination", "Where it went").Required();

    private static readonly Column Which = Column.Text("export_id", "The export").Required();
    private static readonly Column Who = Column.Text("athlete_id", "An athlete in it").Required();

    public static Table Exports { get; } = new("exports", "What was written to places outside the logbook folder", [Id, At, Kind, Destination]) { Key = [Id], IsData = false };

    // No reference to the athletes: an export stays made when the accept that brought an athlete in is undone.
    public static Table Athletes { get; } = new("export-athletes", "Athletes in the exports; an export without rows here holds the whole squad", [Which, Who])
    {
        Key = [Which, Who],
        References = [new ForeignKey(Which, "exports", "export_id")],
        IsData = false,
    };

    public static IReadOnlyList<LogbookExport> Read(TableSource source)
    {
        var seen = new Dictionary<string, LogbookExport>(StringComparer.Ordinal);
        var exports = source.ReadFirst(Exports, row =>
        {
            var export = new LogbookExport(row.Text(Id), row.Moment(At), row.Text(Kind), row.Text(Destination), []);
            row.Once(Id, seen, export.Id, export);
            return export;
        });
        var shown = source.Read(Athletes, row => (row.Referred(Which, seen, Exports).Id, Athlete: row.Text(Who))).ToLookup(row => row.Id, row => row.Athlete);
        return [.. exports.Select(export => export with { AthleteIds = [.. shown[export.Id]] })];
    }

    public static void Write(IReadOnlyList<LogbookExport> exports, TableSink sink)
    {
        sink.Write(Exports, exports, (row, export) => row.Text(export.Id).Moment(export.At).Text(export.Kind).Text(export.Destination));
        sink.Write(Athletes, exports.SelectMany(export => export.AthleteIds, (export, athlete) => (export.Id, athlete)), (row, item) => row.Text(item.Id).Text(item.athlete));
    }
}
