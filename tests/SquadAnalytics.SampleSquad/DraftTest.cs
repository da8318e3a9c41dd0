namespace SquadAnalytics.SampleSquad;

/// <summary>A session that has no number yet, with its expected total.</summary>
internal sealed record DraftTest(Session Session, double ExpectedTotalSeconds)
{
    public DraftTest Numbered(string id) => this with { Session = With(id, Session.Sets, Session.Stations) };

    public DraftTest WithSets(IReadOnlyList<SetTime> sets) => this with
    {
        Session = With(Session.Id, sets, [.. Session.Stations.Where(station => station.Set > sets.Count || sets[station.Set - 1].Work is not null)]),
    };

    private Session With(string id, IReadOnlyList<SetTime> sets, IReadOnlyList<StationTime> stations) =>
        new(id, Session.AthleteId, Session.Date, Session.Protocol, sets)
        {
            Stations = stations,
            TimingResolution = Session.TimingResolution,
            Timer = Session.Timer,
            Place = Session.Place,
            TemperatureCelsius = Session.TemperatureCelsius,
            VoidReason = Session.VoidReason,
        };
}
