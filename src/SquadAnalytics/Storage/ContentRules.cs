namespace SquadAnalytics.Storage;

/// <summary>What the reader of the tables would refuse is refused before it is written, so that a logbook can always be opened again.</summary>
internal static class ContentRules
{
    public static void Check(LogbookContent content)
    {
        var squad = content.Squad;
        var athletes = squad.Athletes.Select(athlete => athlete.Id).ToHashSet(StringComparer.Ordinal);
        CheckSessions(squad);
        foreach (var athlete in squad.Athletes) Distinct(athlete.Aliases, $"aliases of athlete '{athlete.Id}'");
        Known(squad.Contexts.Select(context => context.AthleteId), athletes, "A context");
        Known(squad.Events.Select(happened => happened.AthleteId), athletes, "An event");
        Known(content.HealthNotes.Select(note => note.AthleteId), athletes, "A health note");
        Known(squad.Blocks.SelectMany(block => block.Members), athletes, "A block");
        foreach (var block in squad.Blocks) Distinct(block.Members, $"members of block '{block.Id}'");
        foreach (var row in content.HeldRows)
        {
            Distinct(row.Cells.Select(cell => cell.ColumnNumber), $"column numbers of held row '{row.Id}'");
            Distinct(row.DecisionIds, $"decisions of held row '{row.Id}'");
        }

        foreach (var context in squad.Contexts)
        {
            Within(context.SessionRpe, 0, 10, "session RPE", context);
            Within(context.Minutes, 0, double.MaxValue, "minutes", context);
            Within(context.SleepHours, 0, double.MaxValue, "sleep hours", context);
            Within(context.BodyMassKilograms, 0, double.MaxValue, "body mass", context);
            Within(context.SparringRoundsBefore, 0, int.MaxValue, "sparring rounds", context);
        }
    }

    private static void CheckSessions(Squad squad)
    {
        var occasions = new Dictionary<(string, DateOnly, string, int), string>();
        foreach (var session in squad.Sessions)
        {
            if (session.Occasion < 1) throw new ArgumentException($"Occasion of session '{session.Id}' must be 1 or more, but was {session.Occasion}.");
            if (session.VoidReason is not null && string.IsNullOrWhiteSpace(session.VoidReason)) throw new ArgumentException($"The reason for leaving out session '{session.Id}' must not be empty.");
            if (session.TimingResolution is { Value: <= 0 }) throw new ArgumentException($"The timing resolution of session '{session.Id}' must be above 0 s.");
            if (session.TemperatureCelsius is { } degrees && !double.IsFinite(degrees)) throw new ArgumentException($"The temperature of session '{session.Id}' must be a finite number.");
            if (!session.IsVoid && !occasions.TryAdd((session.AthleteId, session.Date, session.Protocol.Id, session.Occasion), session.Id))
            {
                var other = occasions[(session.AthleteId, session.Date, session.Protocol.Id, session.Occasion)];
                throw new ArgumentException($"Sessions '{other}' and '{session.Id}' are the same test (athlete, day, protocol, occasion {session.Occasion}). Void one with a reason, or give it another occasion.");
            }

            var stations = session.Stations;
            if (stations.Count == 0) continue;
            var outside = stations.FirstOrDefault(time => time.Set > session.Protocol.Sets || time.Station > session.Protocol.Stations.Count);
            if (outside is not null) throw new ArgumentException($"Session '{session.Id}' has a time for station {outside.Station} of set {outside.Set}, which protocol '{session.Protocol.Id}' does not have.");
            if (stations.DistinctBy(time => (time.Set, time.Station)).Count() != stations.Count) throw new ArgumentException($"Session '{session.Id}' has two times for one station of one set.");
        }
    }

    private static void Known(IEnumerable<string> ids, HashSet<string> athletes, string what)
    {
        var unknown = ids.FirstOrDefault(id => !athletes.Contains(id));
        if (unknown is not null) throw new ArgumentException($"{what} names athlete '{unknown}', who is not in the squad.");
    }

    private static void Distinct<T>(IEnumerable<T> items, string what)
    {
        var seen = new HashSet<T>();
        foreach (var item in items)
        {
            if (!seen.Add(item)) throw new ArgumentException($"The {what} hold '{item}' twice.");
        }
    }

    private static void Within(double? number, double least, double most, string what, DayContext context)
    {
        if (number is { } value && !(value >= least && value <= most))
            throw new ArgumentException(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"The {what} of athlete '{context.AthleteId}' on {context.Date:yyyy-MM-dd} must be a number of {least} or more{(most == 10 ? " and at most 10" : "")}, but was {value}."));
    }
}
