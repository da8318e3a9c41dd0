namespace SquadAnalytics.Storage.Tables;

/// <summary>What is known per athlete and day: context, events, health notes.</summary>
internal static class DayTables
{
    private static readonly Column Who = Column.Text("athlete_id", "The athlete").Required();
    private static readonly Column Day = Column.Date("day", "The day").Required();
    private static readonly Column Rpe = Column.Number("session_rpe", "category-ratio 0 to 10", "Rating of perceived exertion of the whole training session", 0);
    private static readonly Column Minutes = Column.Number("training_min", "min", "Minutes of training", 0);
    private static readonly Column Rounds = Column.Integer("sparring_rounds_before", "Sparring rounds before the test on that day", 0);
    private static readonly Column Sleep = Column.Number("sleep_h", "h", "Hours slept in the night before", 0);
    private static readonly Column Mass = Column.Number("body_mass_kg", "kg", "Body mass", 0);
    private static readonly Column Rest = Column.Flag("rest_day", "Whether the day is confirmed as one of rest").Required();

    private static readonly Column EventId = Column.Text("event_id", "Id, unique in the logbook").Required();
    private static readonly Column Kind = Column.Choice<EventKind>("kind", "What happened");
    private static readonly Column Cleared = Column.Date("cleared_date", "For a head knock: the day of clearance by a licensed clinician");

    private static readonly Column NoteId = Column.Text("note_id", "Id, unique in the logbook").Required();
    private static readonly Column Note = Column.Text("note", "The note").Required();

    private static readonly IReadOnlyDictionary<string, EventKind> Kinds = Word.All<EventKind>();

    public static Table Contexts { get; } = new("day-context", "What surrounded training, per athlete and day; empty means not written down", [Who, Day, Rpe, Minutes, Rounds, Sleep, Mass, Rest])
    {
        Key = [Who, Day],
        References = [AthleteTables.Reference(Who)],
    };

    public static Table Events { get; } = new("events", "Bouts, weigh-ins and head knocks", [EventId, Who, Day, Kind, Cleared]) { Key = [EventId], References = [AthleteTables.Reference(Who)] };

    public static Table HealthNotes { get; } = new("health-notes", "Health notes; out of reports and exports by default", [NoteId, Who, Day, Note])
    {
        Key = [NoteId],
        References = [AthleteTables.Reference(Who)],
        IsData = false,
    };

    public static IReadOnlyList<DayContext> ReadContexts(TableSource source, IReadOnlyDictionary<string, Athlete> athletes)
    {
        var seen = new Dictionary<(string, DateOnly), bool>();
        return source.Read(Contexts, row =>
        {
            var context = new DayContext(row.Referred(Who, athletes, AthleteTables.Athletes).Id, row.Date(Day))
            {
                SessionRpe = row.NumberOrNull(Rpe),
                Minutes = row.NumberOrNull(Minutes),
                SparringRoundsBefore = row.IntegerOrNull(Rounds),
                SleepHours = row.NumberOrNull(Sleep),
                BodyMassKilograms = row.NumberOrNull(Mass),
                IsRestDay = row.Flag(Rest),
            };
            if (context.SessionRpe > 10) throw row.Bad(Rpe, "is too large", "a number from 0 to 10");
            row.Once(Day, seen, (context.AthleteId, context.Date), true);
            return context;
        });
    }

    public static IReadOnlyList<AthleteEvent> ReadEvents(TableSource source, IReadOnlyDictionary<string, Athlete> athletes)
    {
        var seen = new Dictionary<string, bool>(StringComparer.Ordinal);
        return source.Read(Events, row =>
        {
            var happened = new AthleteEvent(row.Text(EventId), row.Referred(Who, athletes, AthleteTables.Athletes).Id, row.Date(Day), row.Choice(Kind, Kinds)) { ClearedOn = row.DateOrNull(Cleared) };
            row.Once(EventId, seen, happened.Id, true);
            return happened;
        });
    }

    public static IReadOnlyList<HealthNote> ReadHealthNotes(TableSource source, IReadOnlyDictionary<string, Athlete> athletes)
    {
        var seen = new Dictionary<string, bool>(StringComparer.Ordinal);
        return source.Read(HealthNotes, row =>
        {
            var note = new HealthNote(row.Text(NoteId), row.Referred(Who, athletes, AthleteTables.Athletes).Id, row.Date(Day), row.Text(Note));
            row.Once(NoteId, seen, note.Id, true);
            return note;
        });
    }

    public static void WriteContexts(IReadOnlyList<DayContext> contexts, TableSink sink) => sink.Write(Contexts, contexts, (row, context) => row
        .Text(context.AthleteId).Date(context.Date).Number(context.SessionRpe).Number(context.Minutes).Integer(context.SparringRoundsBefore)
        .Number(context.SleepHours).Number(context.BodyMassKilograms).Flag(context.IsRestDay));

    public static void WriteEvents(IReadOnlyList<AthleteEvent> events, TableSink sink) => sink.Write(Events, events, (row, happened) => row
        .Text(happened.Id).Text(happened.AthleteId).Date(happened.Date).Text(Word.Of(happened.Kind)).Date(happened.ClearedOn));

    public static void WriteHealthNotes(IReadOnlyList<HealthNote> notes, TableSink sink) => sink.Write(HealthNotes, notes, (row, note) => row
        .Text(note.Id).Text(note.AthleteId).Date(note.Date).Text(note.Text));
}
