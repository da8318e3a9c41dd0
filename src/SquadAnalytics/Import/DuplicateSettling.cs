using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>Settles records of the same athlete, date, protocol and occasion: the same content is kept once, different content is a decision.</summary>
internal sealed class DuplicateSettling(RawImport raw, ImportOptions options, Decisions decisions)
{
    private const string KeepKnown = "keep the logbook's";
    private const string FurtherTests = "further tests of that day";

    private readonly Dictionary<SessionKey, Session> _known = Index(options.Squad);
    private readonly HashSet<string> _ids = (options.Squad?.Sessions ?? []).Select(session => session.Id).ToHashSet(StringComparer.Ordinal);
    private readonly List<Session> _added = [];
    private readonly List<Session> _changed = [];
    private int _repeated;
    private int _alreadyKnown;

    public IReadOnlyList<Session> Added => _added;

    public IReadOnlyList<Session> Changed => _changed;

    /// <summary>Settles all built sessions, in their order.</summary>
    public void Apply(IReadOnlyList<BuiltSession> sessions)
    {
        Number(sessions);
        foreach (var group in sessions.GroupBy(KeyOf)) Settle(group.Key, [.. group]);
        if (_repeated > 0) raw.Notes.Add(string.Create(CultureInfo.InvariantCulture, $"Tests written twice with the same times and kept once: {_repeated}."));
        if (_alreadyKnown > 0) raw.Notes.Add(string.Create(CultureInfo.InvariantCulture, $"Tests that are in the logbook already and were not added again: {_alreadyKnown}."));
    }

    // A column that tells tests of a day apart: its whole numbers are occasions, other labels count in the order met.
    private void Number(IReadOnlyList<BuiltSession> sessions)
    {
        var labelled = sessions.Where(session => session.Draft.Texts.Label != TextTable.None);
        foreach (var day in labelled.GroupBy(session => (session.Session.AthleteId, session.Session.Date, session.Session.Protocol.Id)))
        {
            var labels = day.Select(session => session.Draft.Texts.Label).Distinct().ToList();
            var numbers = labels.ConvertAll(label => int.TryParse(raw.Labels[label], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0 ? number : 0);
            var areOccasions = numbers.TrueForAll(number => number > 0) && numbers.Distinct().Count() == numbers.Count;
            foreach (var session in day)
            {
                var place = labels.IndexOf(session.Draft.Texts.Label);
                session.Session = session.Session with { Occasion = areOccasions ? numbers[place] : place + 1 };
            }
        }
    }

    private void Settle(SessionKey key, List<BuiltSession> group)
    {
        var distinct = new List<BuiltSession>();
        foreach (var session in group)
        {
            if (distinct.Exists(other => BuiltSession.SameContent(other.Session, session.Session))) _repeated++;
            else distinct.Add(session);
        }

        var known = _known.GetValueOrDefault(key);
        if (distinct.Count == 1 && (known is null || Agree(known, distinct[0].Session)))
        {
            if (known is null) Add(key, distinct[0].Session);
            return;
        }

        Ask(key, known, distinct, [.. group.SelectMany(session => session.Draft.Rows).Where(row => !row.IsRefused)]);
    }

    private bool Agree(Session known, Session read)
    {
        if (BuiltSession.Completes(read, known))
        {
            _alreadyKnown++;
            return true;
        }

        if (!BuiltSession.Completes(known, read)) return false;
        Replace(known, read);
        return true;
    }

    private void Ask(SessionKey key, Session? known, List<BuiltSession> read, List<ParsedRow> rows)
    {
        var example = read[0].Session;
        var athlete = raw.Names[read[0].Draft.Texts.Name];
        var answer = decisions.Ask(
            string.Create(CultureInfo.InvariantCulture, $"duplicate:{key.AthleteId}:{key.Date:yyyy-MM-dd}:{key.ProtocolId}:{key.Occasion}"),
            DecisionKind.Duplicate,
            string.Create(CultureInfo.InvariantCulture, $"{athlete} has different times of '{example.Protocol.Name}' on {key.Date:yyyy-MM-dd}: {(known is null ? "" : $"in the logbook {Times(known)}; ")}{string.Join("; ", read.Select(session => $"{session.Place} {Times(session.Session)}"))}. Which count?"),
            [.. known is null ? Array.Empty<string>() : [KeepKnown], .. read.Select(session => $"keep {session.Place}"), FurtherTests],
            rows);
        switch (answer)
        {
            case null:
                return;
            case FurtherTests:
                var occasion = known is null ? key.Occasion : key.Occasion + 1;
                foreach (var session in read)
                {
                    while (_known.ContainsKey(key with { Occasion = occasion })) occasion++;
                    Add(key with { Occasion = occasion }, session.Session with { Occasion = occasion });
                }

                return;
            default:
                var kept = read.Find(session => answer == $"keep {session.Place}");
                foreach (var session in read.Where(session => session != kept)) session.Draft.Refuse(new RowFault(null, "another record of the same test was kept by a person's decision", "another answer to the decision"));
                if (kept is null) return;
                if (known is null) Add(key, kept.Session);
                else Replace(known, kept.Session);
                return;
        }
    }

    private void Add(SessionKey key, Session session)
    {
        var named = session with { Id = FreeId(Session.IdFor(key.AthleteId, key.Date, key.ProtocolId, session.Occasion)) };
        _known[key] = named;
        _added.Add(named);
    }

    // What the logbook says beside the times stays.
    private void Replace(Session known, Session read) => _changed.Add(read with
    {
        Id = known.Id,
        Occasion = known.Occasion,
        Timer = read.Timer ?? known.Timer,
        Place = read.Place ?? known.Place,
        TemperatureCelsius = read.TemperatureCelsius ?? known.TemperatureCelsius,
        VoidReason = known.VoidReason,
    });

    // An id may be taken where a session of the squad was moved to another day since.
    private string FreeId(string wanted)
    {
        var id = wanted;
        for (var number = 2; !_ids.Add(id); number++) id = string.Create(CultureInfo.InvariantCulture, $"{wanted}-{number}");
        return id;
    }

    private static Dictionary<SessionKey, Session> Index(Squad? squad)
    {
        var known = new Dictionary<SessionKey, Session>();
        foreach (var session in squad?.Sessions ?? []) known[new SessionKey(session.AthleteId, session.Date, session.Protocol.Id, session.Occasion)] = session;
        return known;
    }

    private static SessionKey KeyOf(BuiltSession built) => new(built.Session.AthleteId, built.Session.Date, built.Session.Protocol.Id, built.Session.Occasion);

    private static string Times(Session session) => string.Join(' ', session.Sets.Select(set => set.Work?.Value.ToString("0.###", CultureInfo.InvariantCulture) ?? "-"));

    private readonly record struct SessionKey(string AthleteId, DateOnly Date, string ProtocolId, int Occasion);
}
