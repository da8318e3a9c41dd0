namespace SquadAnalytics.Storage.Tables;

/// <summary>The protocol versions, with their stations and bands.</summary>
internal static class ProtocolTables
{
    private static readonly Column Id = Column.Text("protocol_id", "Id of the protocol version, unique in the logbook").Required();
    private static readonly Column Name = Column.Text("protocol_name", "Name as printed").Required();
    private static readonly Column Sets = Column.Integer("sets", "Number of sets", 2).Required();
    private static readonly Column Interval = Column.Number("start_interval_s", "s", "Start interval of the rolling clock, empty where not known", 0);
    private static readonly Column Rule = Column.Choice<StartRule>("start_rule", "What happens at a missed start signal");
    private static readonly Column VariantOf = Column.Text("variant_of", "The protocol version that this one scales");

    private static readonly Column Which = Column.Text("protocol_id", "The protocol version").Required();
    private static readonly Column Number = Column.Integer("station_number", "Place in the circuit, from 1", 1).Required();
    private static readonly Column Exercise = Column.Text("station_name", "The exercise").Required();
    private static readonly Column Repetitions = Column.Integer("repetitions", "Repetitions in each set", 1).Required();
    private static readonly Column Band = Column.Text("band_name", "Name of the band").Required();
    private static readonly Column Low = Column.Number("low_total_s", "s", "Fastest session total inside the band").Required();
    private static readonly Column High = Column.Number("high_total_s", "s", "First session total outside the band").Required();
    private static readonly Column ValidFrom = Column.Date("valid_from_date", "First test date the band applies to, empty for always");

    private static readonly IReadOnlyDictionary<string, StartRule> Rules = Word.All<StartRule>();

    public static Table Protocols { get; } = new("protocols", "Protocol versions; one never changes once it was used", [Id, Name, Sets, Interval, Rule, VariantOf]) { Key = [Id] };

    public static Table Stations { get; } = new("protocol-stations", "Stations of the circuits in their order", [Which, Number, Exercise, Repetitions]) { Key = [Which, Number], References = [Reference(Which)] };

    public static Table Bands { get; } = new("protocol-bands", "Bands of session totals, low <= total < high", [Which, Band, Low, High, ValidFrom]) { References = [Reference(Which)] };

    /// <summary>The key by which other tables refer to a protocol version.</summary>
    public static ForeignKey Reference(Column column) => new(column, "protocols", "protocol_id");

    public static IReadOnlyList<Protocol> Read(TableSource source)
    {
        var seen = new Dictionary<string, Protocol>(StringComparer.Ordinal);
        var protocols = source.ReadFirst(Protocols, row =>
        {
            var interval = row.NumberOrNull(Interval);
            if (interval is <= 0) throw row.Bad(Interval, "is not above 0");
            var protocol = new Protocol(row.Text(Id), row.Text(Name), [], row.Integer(Sets), interval is { } seconds ? new Seconds(seconds) : null)
            {
                StartRule = row.Choice(Rule, Rules),
                VariantOf = row.TextOrNull(VariantOf),
            };
            row.Once(Id, seen, protocol.Id, protocol);
            return protocol;
        });
        var places = new Dictionary<(string, int), int>();
        var stations = source.Read(Stations, row =>
        {
            var protocol = row.Referred(Which, seen, Protocols).Id;
            var number = row.Integer(Number);
            row.Once(Number, places, (protocol, number), number);
            if (number > 1 && !places.ContainsKey((protocol, number - 1))) throw row.Bad(Number, "leaves a gap", "stations numbered 1, 2, 3 in order");
            return (protocol, Station: new Station(row.Text(Exercise), row.Integer(Repetitions)));
        }).ToLookup(row => row.protocol, row => row.Station);
        var bands = source.Read(Bands, row =>
        {
            var low = new Seconds(row.Number(Low));
            var high = new Seconds(row.Number(High));
            if (high <= low) throw row.Bad(High, "is not above low_total_s");
            return (row.Referred(Which, seen, Protocols).Id, Band: new PerformanceBand(row.Text(Band), low, high, row.DateOrNull(ValidFrom)));
        }).ToLookup(row => row.Id, row => row.Band);
        return [.. protocols.Select(protocol => new Protocol(protocol.Id, protocol.Name, [.. stations[protocol.Id]], protocol.Sets, protocol.StartInterval)
        {
            StartRule = protocol.StartRule,
            VariantOf = protocol.VariantOf,
            Bands = [.. bands[protocol.Id]],
        })];
    }

    public static void Write(IReadOnlyList<Protocol> protocols, TableSink sink)
    {
        sink.Write(Protocols, protocols, (row, protocol) => row
            .Text(protocol.Id).Text(protocol.Name).Integer(protocol.Sets).Number(protocol.StartInterval?.Value).Text(Word.Of(protocol.StartRule)).Text(protocol.VariantOf));
        sink.Write(Stations, protocols.SelectMany(protocol => protocol.Stations.Select((station, index) => (protocol.Id, Number: index + 1, station))), (row, item) => row
            .Text(item.Id).Integer(item.Number).Text(item.station.Name).Integer(item.station.Repetitions));
        sink.Write(Bands, protocols.SelectMany(protocol => protocol.Bands, (protocol, band) => (protocol.Id, band)), (row, item) => row
            .Text(item.Id).Text(item.band.Name).Number(item.band.Low.Value).Number(item.band.High.Value).Date(item.band.ValidFrom));
    }
}
