using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Standing;

/// <summary>Who was due for the test of one week, and who did it.</summary>
public sealed record WeekAttendance
{
    private const int DaysPerWeek = 7;

    private WeekAttendance(DateOnly weekFrom, DateOnly testDay, IReadOnlyList<AthletePresence> athletes) => (WeekFrom, TestDay, Athletes) = (weekFrom, testDay, athletes);

    /// <summary>Monday of the week.</summary>
    public DateOnly WeekFrom { get; }

    /// <summary>The day of the week on which most of the squad did the test; the day that was asked for where nobody did.</summary>
    public DateOnly TestDay { get; }

    /// <summary>Everyone who was due, tested, or barred from testing, in the order of their ids.</summary>
    public IReadOnlyList<AthletePresence> Athletes { get; }

    /// <summary>Athletes who were due: all but the barred.</summary>
    public int Due => Athletes.Count(athlete => athlete.Presence != Presence.Barred);

    /// <summary>Athletes of one presence.</summary>
    public IReadOnlyList<AthletePresence> Of(Presence presence) => [.. Athletes.Where(athlete => athlete.Presence == presence)];

    /// <summary>Goes through the squad.</summary>
    /// <remarks>
    /// Due is who has the test in the week, or is in the squad on the test day, has done this protocol in the weeks before, and is not barred by a head knock
    /// (Patricios et al. 2023, Br J Sports Med 57:695-711: no conditioning test before clearance). Absence is not a time: nothing is imputed. Source of the rest:
    /// common practice, no source.
    /// </remarks>
    /// <param name="squad">The squad.</param>
    /// <param name="protocol">The protocol; sessions of the same key count.</param>
    /// <param name="day">Any day of the week.</param>
    /// <param name="recentWeeks">How many weeks back a test of this protocol makes an athlete one who is due; 1 or more. Default 8.</param>
    public static WeekAttendance Summarize(Squad squad, Protocol protocol, DateOnly day, int recentWeeks = 8)
    {
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(protocol);
        Require.AtLeast(1, recentWeeks);
        var monday = TestSeries.MondayOf(day);
        var own = squad.Sessions.Where(session => session.Protocol.Key == protocol.Key && session.Date < monday.AddDays(DaysPerWeek)).ToLookup(session => session.AthleteId, StringComparer.Ordinal);
        var testDay = own.SelectMany(sessions => sessions).Where(session => session.Date >= monday).GroupBy(session => session.Date)
            .OrderByDescending(sessions => sessions.Count()).ThenBy(sessions => sessions.Key).FirstOrDefault()?.Key ?? day;
        var rows = squad.Athletes.OrderBy(athlete => athlete.Id, StringComparer.Ordinal)
            .Select(athlete => Row(athlete, [.. own[athlete.Id]], squad.Events, monday, testDay, recentWeeks)).OfType<AthletePresence>();
        return new WeekAttendance(monday, testDay, [.. rows]);
    }

    /// <summary>Test day and counts.</summary>
    public override string ToString() => FormattableString.Invariant($"{TestDay:yyyy-MM-dd}: {Of(Presence.Tested).Count} of {Due} due athletes tested, {Of(Presence.Barred).Count} not due");

    private static AthletePresence? Row(Athlete athlete, IReadOnlyList<Session> own, IReadOnlyList<AthleteEvent> events, DateOnly monday, DateOnly testDay, int recentWeeks)
    {
        var inWeek = own.Where(session => session.Date >= monday).ToList();
        // Of several sessions in the week the one that says most: a complete one, otherwise the latest.
        var session = inWeek.FindLast(item => !item.IsVoid && item.IsComplete) ?? inWeek.FindLast(item => !item.IsVoid) ?? inWeek.LastOrDefault();
        var earlier = own.Where(item => item.Date < monday).ToList();
        var lastComplete = earlier.FindLast(item => !item.IsVoid && item.IsComplete)?.Date;
        if (session is not null) return new AthletePresence(athlete.Id, Of(session), session, lastComplete, null);
        var isMember = (athlete.Joined is null || athlete.Joined <= testDay) && (athlete.Left is null || athlete.Left >= testDay);
        var bar = events.FirstOrDefault(item => item.AthleteId == athlete.Id && item.BarsTestingOn(testDay));
        // A barred athlete stays on the list however long ago the last test was: the clearance is what is waited for.
        var isRecent = earlier.Any(item => item.Date >= monday.AddDays(-DaysPerWeek * recentWeeks)) || (bar is not null && earlier.Count > 0);
        if (!isMember || !isRecent) return null;
        return new AthletePresence(athlete.Id, bar is null ? Presence.Absent : Presence.Barred, null, lastComplete, bar);
    }

    private static Presence Of(Session session) => session switch
    {
        { IsVoid: true } => Presence.Void,
        { IsComplete: true } => Presence.Tested,
        _ => session.Sets.All(set => set.Status is SetStatus.NotRecorded or SetStatus.NotStarted) ? Presence.NotStarted : Presence.Incomplete,
    };
}
