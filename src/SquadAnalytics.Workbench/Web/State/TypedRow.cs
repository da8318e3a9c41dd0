using System.Globalization;
using SquadAnalytics.Import;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>One athlete's line of the typing grid: the text of each set as typed, and what it amounts to so far.</summary>
/// <param name="athlete">The athlete.</param>
/// <param name="protocol">The protocol of the session.</param>
/// <param name="date">The test date.</param>
/// <param name="known">The athlete's session of that date and protocol where there is one already: the line starts with it and changes it.</param>
public sealed class TypedRow(Athlete athlete, Protocol protocol, DateOnly date, Session? known)
{
    private readonly string[] _texts = known is null ? [.. Enumerable.Repeat("", protocol.Sets)] : [.. known.Sets.Select(Text)];
    private readonly string[] _before = known is null ? [.. Enumerable.Repeat("", protocol.Sets)] : [.. known.Sets.Select(Text)];

    /// <summary>The athlete.</summary>
    public Athlete Athlete { get; } = athlete;

    /// <summary>The protocol of the session.</summary>
    public Protocol Protocol { get; } = protocol;

    /// <summary>Why the session is saved although a head knock is not cleared; asked for before saving.</summary>
    public string HeadKnockReason { get; set; } = "";

    /// <summary>The set that is being typed, from 1; 0 where none is. Half a time is not a mistake yet, and nothing else is written over it.</summary>
    public int Typing { get; set; }

    /// <summary>Whether anything was typed, or changed in a session that is there already.</summary>
    public bool IsStarted => !_texts.SequenceEqual(_before);

    /// <summary>Whether every entry can be read.</summary>
    public bool IsReadable => Enumerable.Range(1, Protocol.Sets).All(set => Problem(set) is null);

    /// <summary>The text of a set, from 1.</summary>
    public string this[int set]
    {
        get => _texts[set - 1];
        set => _texts[set - 1] = value;
    }

    /// <summary>What is wrong with a set's entry, or null.</summary>
    public string? Problem(int set) => Entry(set) switch
    {
        { Kind: EntryKind.Unreadable, Reason: var reason } => reason,
        { Work: { } work } when Protocol.StartInterval is { } start && work.Value > 3 * start.Value => "more than three start intervals",
        { Work: { Value: < 5 } } => "seconds, or minutes and seconds such as 1:02?",
        _ => null,
    };

    /// <summary>Rest left after a set, in seconds; null where it cannot be said.</summary>
    public double? RestAfter(int set) => Protocol.StartInterval is { } start && Entry(set).Work is { } work ? Math.Max(0, start.Value - work.Value) : null;

    /// <summary>The line's total so far and, once complete, its band.</summary>
    public string Sum()
    {
        var times = Enumerable.Range(1, Protocol.Sets).Select(set => Entry(set).Work).OfType<Seconds>().ToList();
        if (times.Count == 0) return "";
        var total = times.Aggregate((sum, time) => sum + time);
        var text = total.Value.ToString("0.0#", CultureInfo.InvariantCulture);
        if (times.Count < Protocol.Sets) return $"{text} after {times.Count}";
        return Protocol.BandOf(total, date) is { } band ? $"{text}, {band.Name}" : text;
    }

    /// <summary>The session that the line stands for; what a session known already holds beside its times stays.</summary>
    public Session ToSession(string? timer, string? place, double? celsius) =>
        new(known?.Id ?? Session.IdFor(Athlete.Id, date, Protocol.Id), Athlete.Id, date, Protocol, [.. Enumerable.Range(1, Protocol.Sets).Select(ToSet)])
        {
            Stations = known?.Stations ?? [],
            Timer = timer ?? known?.Timer,
            Place = place ?? known?.Place,
            TemperatureCelsius = celsius ?? known?.TemperatureCelsius,
            VoidReason = known?.VoidReason,
            TimingResolution = Enumerable.Range(1, Protocol.Sets).Select(set => Entry(set).Resolution).Where(step => step is not null).Min(),
        };

    /// <summary>The athlete and what was typed.</summary>
    public override string ToString() => $"{Athlete.DisplayName}: {string.Join(" | ", _texts)}";

    // Typed one at a time, a comma can only be a decimal mark.
    private TimeEntry Entry(int set) => TimeEntry.Parse(_texts[set - 1], DecimalMark.Comma);

    // A set that nobody touched stays as it was: it may hold what cannot be typed, such as a stop for health.
    private SetTime ToSet(int set) => known is not null && _texts[set - 1] == _before[set - 1] ? known.Sets[set - 1] : Entry(set) switch
    {
        { Work: { } work } => new SetTime(set, work),
        { Kind: EntryKind.NotFinished } => new SetTime(set, SetStatus.NotFinished),
        { Kind: EntryKind.NotStarted } => new SetTime(set, SetStatus.NotStarted),
        _ => new SetTime(set, SetStatus.NotRecorded),
    };

    private static string Text(SetTime set) => set.Status switch
    {
        SetStatus.Timed => set.Work!.Value.Value.ToString("0.0##", CultureInfo.InvariantCulture),
        SetStatus.NotFinished => "DNF",
        SetStatus.NotStarted => "DNS",
        _ => "",
    };
}
