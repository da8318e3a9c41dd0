namespace SquadAnalytics.Storage.Tables;

/// <summary>A session while its rows are being collected from three tables.</summary>
internal sealed class SessionRows(string id, string athleteId, DateOnly date, Protocol protocol)
{
    private HashSet<(int Set, int Station)>? _seenStations;

    public string Id => id;

    public string AthleteId => athleteId;

    public DateOnly Date => date;

    public Protocol Protocol => protocol;

    public SetTime?[] Sets { get; } = new SetTime?[protocol.Sets];

    public List<StationTime> Stations { get; } = new(0);

    /// <summary>Whether a station of a set is met for the first time.</summary>
    public bool IsFirst(int set, int station) => (_seenStations ??= []).Add((set, station));

    public required int Occasion { get; init; }

    public Seconds? TimingResolution { get; init; }

    public string? Timer { get; init; }

    public string? Place { get; init; }

    public double? TemperatureCelsius { get; init; }

    public string? VoidReason { get; init; }

    /// <summary>The session; sets without a row were not recorded.</summary>
    public Session Build()
    {
        for (var index = 0; index < Sets.Length; index++) Sets[index] ??= new SetTime(index + 1, SetStatus.NotRecorded);
        return new Session(Id, AthleteId, Date, Protocol, Sets!)
        {
            Occasion = Occasion,
            Stations = Stations,
            TimingResolution = TimingResolution,
            Timer = Timer,
            Place = Place,
            TemperatureCelsius = TemperatureCelsius,
            VoidReason = VoidReason,
        };
    }
}
