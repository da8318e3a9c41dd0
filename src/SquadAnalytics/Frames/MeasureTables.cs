using SquadAnalytics.Sets;
using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Frames;

/// <summary>The computed measures of the sessions and of the sets on the rolling clock, as tables.</summary>
internal static class MeasureTables
{
    /// <summary>One row per session, void and incomplete ones included; a measure that would be refused is empty.</summary>
    public static Table Sessions { get; } = new("session-measures", "Computed measures, one row per session; empty where a measure needs sets that are missing", [
        Column.Text("session_id", "The session").Required(),
        Column.Text("athlete_id", "The athlete").Required(),
        Column.Text("athlete", "Name of the athlete; code of a junior").Required(),
        Column.Date("test_date", "Day of the test").Required(),
        Column.Integer("occasion", "Which test of the protocol on that day, from 1", 1).Required(),
        Column.Text("protocol_id", "The protocol version").Required(),
        Column.Flag("is_void", "Whether the session is left out of analyses").Required(),
        Column.Flag("is_complete", "Whether every set has a time and no start was missed that ends the test").Required(),
        Column.Integer("timed_sets", "Number of sets with a time", 0).Required(),
        Column.Number("total_s", "s", "Session total, the sum of all work times", 0),
        Column.Text("band", "Band of the total on that day"),
        Column.Number("mean_set_s", "s", "Mean of the timed sets", 0),
        Column.Number("best_set_s", "s", "Fastest timed set", 0),
        Column.Number("worst_set_s", "s", "Slowest timed set", 0),
        Column.Number("sd_s", "s", "SD (n - 1) across the timed sets; mixes trend and scatter", 0),
        Column.Number("cv_percent", "%", "100 SD / mean across the timed sets", 0),
        Column.Number("decrement_percent", "%", "Percentage decrement, 100 (total / (n best) - 1)", 0),
        Column.Number("first_to_last_percent", "%", "100 (last - first) / first"),
        Column.Number("slope_s_per_set", "s/set", "Least-squares slope of the work times on the set number"),
        Column.Number("late_contrast_s", "s", "Mean of the sets after the first half (n / 2, rounded down) minus mean of the first half; positive is slower later"),
        Column.Number("rest_left_s", "s", "Rest left on the rolling clock, all sets but the last together", 0),
        Column.Number("least_rest_s", "s", "Least rest left after a set", 0),
        Column.Number("work_to_rest_ratio", "", "Work over rest, all sets but the last", 0),
        Column.Number("density_ratio", "", "Session total over the finish of the last set", 0),
    ]);

    /// <summary>One row per set on the rolling clock, up to the first without a time.</summary>
    public static Table Clock { get; } = new("set-clock", "Work and rest on the rolling clock, one row per set up to the first without a time", [
        Column.Text("session_id", "The session").Required(),
        Column.Integer("set_number", "Number of the set, from 1", 1).Required(),
        Column.Number("start_s", "s", "When the set started, from the first start signal", 0).Required(),
        Column.Number("work_s", "s", "Work time", 0).Required(),
        Column.Number("finish_s", "s", "When the set was finished, from the first start signal", 0).Required(),
        Column.Number("late_s", "s", "How long after its start signal the set started", 0).Required(),
        Column.Number("rest_left_s", "s", "Rest until the next set, empty after the last", 0),
        Column.Number("rest_lost_s", "s", "Rest lost up to here against repeating the first set, empty after the last"),
    ]);

    public static void WriteSessions(Squad squad, TableSink sink)
    {
        var athletes = squad.Athletes.ToDictionary(athlete => athlete.Id, StringComparer.Ordinal);
        sink.Write(Sessions, squad.Sessions, (row, session) => Write(row, session, athletes[session.AthleteId]));
    }

    public static void WriteClock(Squad squad, TableSink sink) =>
        sink.Write(Clock, squad.Sessions.SelectMany(static session => ClockOf(session), static (session, set) => (session.Id, Set: set)), static (row, item) => row
            .Text(item.Id).Integer(item.Set.Set).Number(item.Set.Start.Value).Number(item.Set.Work.Value).Number(item.Set.Finish.Value).Number(item.Set.Late.Value)
            .Number(item.Set.Rest?.Value).Number(item.Set.RestLost?.Value));

    private static IReadOnlyList<ClockSet> ClockOf(Session session) => WorkAndRest.Summarize(session).Match(static clock => clock.Sets, static _ => []);

    private static void Write(TableWriter row, Session session, Athlete athlete)
    {
        double[] times = [.. session.TimesSeconds];
        SetMeasures? timed = times.Length > 0 ? SetMeasures.Of(times) : null;
        var spread = times.Length > 1 ? timed : null;
        // As the analyses themselves refuse: a total needs every set, an index three, a slope or a contrast sets in their places.
        var whole = session.IsComplete ? timed : null;
        var shape = session.IsComplete && times.Length > 2 ? timed : null;
        double? total = whole?.Total;
        row.Text(session.Id).Text(session.AthleteId).Text(athlete.LabelOn(session.Date)).Date(session.Date).Integer(session.Occasion).Text(session.Protocol.Id)
            .Flag(session.IsVoid).Flag(session.IsComplete).Integer(times.Length)
            .Number(total).Text(total is { } seconds ? session.Protocol.BandOf(new Seconds(seconds), session.Date)?.Name : null)
            .Number(timed?.Mean).Number(timed?.Best).Number(timed?.Worst).Number(spread?.StandardDeviation).Number(spread?.CoefficientOfVariation)
            .Number(shape?.Decrement).Number(shape is { } known ? 100 * (known.LastToFirst - 1) : null).Number(shape?.Slope)
            .Number(whole is null ? null : Contrasts.Apply(Contrasts.Late(times.Length, times.Length / 2), times));
        WriteClock(row, session);
    }

    private static void WriteClock(TableWriter row, Session session)
    {
        var clock = WorkAndRest.Summarize(session).Match<WorkAndRestResult?>(static result => result, static _ => null);
        var rests = clock is null || !session.IsComplete ? [] : clock.Sets.Select(static set => set.Rest?.Value).OfType<double>().ToList();
        row.Number(rests.Count > 0 ? rests.Sum() : null).Number(rests.Count > 0 ? rests.Min() : null)
            .Number(clock?.WorkToRest.Match<double?>(static ratio => ratio.Value, static _ => null))
            .Number(clock?.Density.Match<double?>(static ratio => ratio.Value, static _ => null));
    }
}
