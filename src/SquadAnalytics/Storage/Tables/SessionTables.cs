namespace SquadAnalytics.Storage.Tables;

/// <summary>The sessions, with their set times and station times.</summary>
internal static class SessionTables
{
    private static readonly Column Id = Column.Text("session_id", "Id, unique in the logbook").Required();
    private static readonly Column Who = Column.Text("athlete_id", "The athlete").Required();
    private static readonly Column Date = Column.Date("test_date", "Day of the test").Required();
    private static readonly Column Occasion = Column.Integer("occasion", "Which test of the protocol on that day, from 1", 1).Required();
    private static readonly Column Which = Column.Text("protocol_id", "The protocol version").Required();
    private static readonly Column Resolution = Column.Number("timing_resolution_s", "s", "Step in which times were written, empty where not known", 0);
    private static readonly Column Timer = Column.Text("timer", "Who or what took the times");
    private static readonly Column Place = Column.Text("place", "Where the test was done");
    private static readonly Column Temperature = Column.Number("temperature_c", "°C", "Air temperature");
    private static readonly Column Void = Column.Text("void_reason", "Why the session is left out of analyses, empty where it counts");

    private static readonly Column SessionId = Column.Text("session_id", "The session").Required();
    private static readonly Column SetNumber = Column.Integer("set_number", "Number of the set, from 1", 1).Required();
    private static readonly Column StationNumber = Column.Integer("station_number", "Place of the station in the circuit, from 1", 1).Required();
    private static readonly Column Status = Column.Choice<SetStatus>("status", "What is known of it");
    private static readonly Column Work = Column.Number("work_s", "s", "Work time, empty where not timed", 0);

    private static readonly IReadOnlyDictionary<string, SetStatus> Statuses = Word.All<SetStatus>();
    private static readonly string[] StatusWords = [.. Enum.GetValues<SetStatus>().Select(Word.Of)];

    public static Table Sessions { get; } = new("sessions", "One administration of the test to one athlete on one day", [Id, Who, Date, Occasion, Which, Resolution, Timer, Place, Temperature, Void])
    {
        Key = [Id],
        References = [AthleteTables.Reference(Who), ProtocolTables.Reference(Which)],
    };

    public static Table SetTimes { get; } = new("set-times", "One row for each set of each session", [SessionId, SetNumber, Status, Work])
    {
        Key = [SessionId, SetNumber],
        References = [new ForeignKey(SessionId, "sessions", "session_id")],
    };

    public static Table StationTimes { get; } = new("station-times", "One row for each station of each set where splits were taken", [SessionId, SetNumber, StationNumber, Status, Work])
    {
        Key = [SessionId, SetNumber, StationNumber],
        References = [new ForeignKey(SessionId, "sessions", "session_id")],
    };

    public static IReadOnlyList<Session> Read(TableSource source, IReadOnlyList<Athlete> athletes, IReadOnlyList<Protocol> protocols)
    {
        var athleteById = athletes.ToDictionary(athlete => athlete.Id, StringComparer.Ordinal);
        var protocolById = protocols.ToDictionary(protocol => protocol.Id, StringComparer.Ordinal);
        var drafts = new Dictionary<string, SessionRows>(StringComparer.Ordinal);
        var occasions = new Dictionary<(string, DateOnly, string, int), string>();
        var ordered = source.ReadFirst(Sessions, row =>
        {
            var head = ReadHead(row, athleteById, protocolById);
            row.Once(Id, drafts, head.Id, head);
            if (head.VoidReason is null && !occasions.TryAdd((head.AthleteId, head.Date, head.Protocol.Id, head.Occasion), head.Id))
                throw row.Bad(Occasion, "repeats a test of the same athlete, day and protocol", "another occasion, or a void_reason for one of the two");
            return head;
        });
        source.Read(SetTimes, row => ReadSet(row, drafts));
        source.Read(StationTimes, row => ReadStation(row, drafts));
        source.Check();
        return [.. ordered.Select(rows => rows.Build())];
    }

    public static void Write(IReadOnlyList<Session> sessions, TableSink sink)
    {
        sink.Write(Sessions, sessions, (row, session) => row
            .Text(session.Id).Text(session.AthleteId).Date(session.Date).Integer(session.Occasion).Text(session.Protocol.Id)
            .Number(session.TimingResolution?.Value).Text(session.Timer).Text(session.Place).Number(session.TemperatureCelsius).Text(session.VoidReason));
        sink.Write(SetTimes, sessions.SelectMany(session => session.Sets, (session, set) => (session.Id, set)), (row, item) => row
            .Text(item.Id).Integer(item.set.Set).Text(StatusWord(item.set.Status)).Number(item.set.Work?.Value));
        sink.Write(StationTimes, sessions.SelectMany(session => session.Stations, (session, station) => (session.Id, station)), (row, item) => row
            .Text(item.Id).Integer(item.station.Set).Integer(item.station.Station).Text(StatusWord(item.station.Status)).Number(item.station.Work?.Value));
    }

    // Written a million times over: building the word anew each time would cost more than the rest of the row.
    private static string StatusWord(SetStatus status) => StatusWords[(int)status];

    private static SessionRows ReadHead(TableReader row, Dictionary<string, Athlete> athletes, Dictionary<string, Protocol> protocols)
    {
        var resolution = row.NumberOrNull(Resolution);
        if (resolution is <= 0) throw row.Bad(Resolution, "is not above 0");
        var protocol = row.Referred(Which, protocols, ProtocolTables.Protocols);
        return new SessionRows(row.Text(Id), row.Referred(Who, athletes, AthleteTables.Athletes).Id, row.Date(Date), protocol)
        {
            Occasion = row.Integer(Occasion),
            TimingResolution = resolution is { } step ? new Seconds(step) : null,
            Timer = row.TextOrNull(Timer),
            Place = row.TextOrNull(Place),
            TemperatureCelsius = row.NumberOrNull(Temperature),
            VoidReason = row.TextOrNull(Void),
        };
    }

    private static bool ReadSet(TableReader row, Dictionary<string, SessionRows> sessions)
    {
        var session = row.Referred(SessionId, sessions, Sessions);
        var number = row.Integer(SetNumber);
        if (number > session.Sets.Length) throw row.Bad(SetNumber, "is more than the protocol has", $"1 to {session.Sets.Length}");
        if (session.Sets[number - 1] is not null) throw row.Bad(SetNumber, "stands there twice for this session", "each set once");
        var status = row.Choice(Status, Statuses);
        session.Sets[number - 1] = ReadWork(row, status) is { } work ? new SetTime(number, work) : new SetTime(number, status);
        return true;
    }

    private static bool ReadStation(TableReader row, Dictionary<string, SessionRows> sessions)
    {
        var session = row.Referred(SessionId, sessions, Sessions);
        var (set, station) = (row.Integer(SetNumber), row.Integer(StationNumber));
        if (set > session.Sets.Length) throw row.Bad(SetNumber, "is more than the protocol has", $"1 to {session.Sets.Length}");
        var stations = session.Protocol.Stations.Count;
        if (station > stations) throw row.Bad(StationNumber, "is more than the protocol has", $"1 to {stations}");
        if (!session.IsFirst(set, station)) throw row.Bad(StationNumber, "stands there twice for this set", "each station once");
        var status = row.Choice(Status, Statuses);
        session.Stations.Add(ReadWork(row, status) is { } work ? new StationTime(set, station, work) : new StationTime(set, station, status));
        return true;
    }

    private static Seconds? ReadWork(TableReader row, SetStatus status)
    {
        var work = row.NumberOrNull(Work);
        if (work is <= 0) throw row.Bad(Work, "is not above 0");
        if (work is null && status == SetStatus.Timed) throw row.Bad(Work, "is empty although the status says timed", "a time, or another status");
        if (work is not null && status != SetStatus.Timed) throw row.Bad(Work, $"holds a time although the status says {Word.Of(status)}", "nothing, or the status timed");
        return work is { } seconds ? new Seconds(seconds) : null;
    }
}
