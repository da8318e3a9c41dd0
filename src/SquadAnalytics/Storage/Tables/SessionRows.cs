namespace SquadAnalytics.Storage.Tables;

/// <summary>A session while its rows are being collected from three tables.</summary>
internal sealed class SessionRows(string id, string athleteId, DateOnly date, Protocol protocol)
{
    public string Id => id;

    public string AthleteId => athleteId;

    public DateOnly Date => date;

    public Protocol Protocol => protocol;

    public SetTime?[] Sets { get; } = new SetTime?[protocol.Sets];

    public List<StationTime> Stations { get; } = [];

    public HashSet<(int Set, int Station)> SeenStations { get; } = [];

    public required int Occasion { get; init; }

    public Seconds? TimingResolution { get; init; }

    public string? Timer { get; init; }

    public string? Place { get; init; }

    public double? TemperatureCelsius { get; init; }

    public string? VoidReason { get; init; }

    /// <summary>The session; sets without a row were not recorded.</summary>
    public Session Build() => new(Id, AthleteId, Date, Protocol, [.. Sets.Select((set, index) => set ?? new SetTime(index + 1, SetStatus.NotRecorded))])
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
