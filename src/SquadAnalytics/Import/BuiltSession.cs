namespace SquadAnalytics.Import;

/// <summary>A draft and the session that was made of it.</summary>
internal sealed class BuiltSession(SessionDraft draft, Session session)
{
    public SessionDraft Draft { get; } = draft;

    public Session Session { get; set; } = session;

    /// <summary>Where it was read, as the choices of a decision name it.</summary>
    public string Place => FormattableString.Invariant($"{Path.GetFileName(Draft.Block.Sheet.File)}{(Draft.Block.Sheet.Name is { } sheet ? $" {sheet}" : "")} line {Draft.FirstLine}");

    /// <summary>Whether two sessions record the same.</summary>
    public static bool SameContent(Session left, Session right) =>
        left.Sets.Count == right.Sets.Count
        && left.Sets.Zip(right.Sets).All(pair => Same(pair.First, pair.Second))
        && left.Stations.Count == right.Stations.Count
        && left.Stations.All(station => right.Stations.Any(other => Same(station, other)));

    /// <summary>Whether everything that <paramref name="less"/> records is also in <paramref name="more"/>.</summary>
    public static bool Completes(Session less, Session more) =>
        less.Sets.Zip(more.Sets).All(pair => pair.First.Status == SetStatus.NotRecorded || Same(pair.First, pair.Second))
        && less.Stations.All(station => more.Stations.Any(other => Same(station, other)));

    private static bool Same(SetTime left, SetTime right) => left.Status == right.Status && Same(left.Work, right.Work);

    private static bool Same(StationTime left, StationTime right) => left.Set == right.Set && left.Station == right.Station && left.Status == right.Status && Same(left.Work, right.Work);

    private static bool Same(Seconds? left, Seconds? right) => Math.Abs((left?.Value ?? 0) - (right?.Value ?? 0)) < 5e-4;
}
