using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>Everything known of a squad at one moment: its athletes, protocols, sessions, context, events and blocks.</summary>
public sealed record Squad
{
    private readonly Dictionary<string, Athlete> _athletes;
    private readonly ILookup<string, Session> _sessions;

    /// <summary>Makes a squad and checks that what it refers to exists.</summary>
    /// <param name="name">Name of the squad.</param>
    /// <param name="athletes">Its athletes.</param>
    /// <param name="protocols">Protocol versions in use.</param>
    /// <param name="sessions">All sessions, void ones included.</param>
    /// <exception cref="ArgumentException">An id is used twice, or a session names an athlete or a protocol that is not there.</exception>
    public Squad(string name, IReadOnlyList<Athlete> athletes, IReadOnlyList<Protocol> protocols, IReadOnlyList<Session> sessions)
    {
        ArgumentNullException.ThrowIfNull(athletes);
        ArgumentNullException.ThrowIfNull(protocols);
        ArgumentNullException.ThrowIfNull(sessions);
        Name = Require.Text(name);
        Athletes = [.. athletes];
        Protocols = [.. protocols];
        Sessions = [.. sessions.OrderBy(session => session.Date).ThenBy(session => session.Occasion).ThenBy(session => session.Id, StringComparer.Ordinal)];
        _athletes = Unique(athletes, athlete => athlete.Id, "athlete", nameof(athletes));
        var protocolIds = Unique(protocols, protocol => protocol.Id, "protocol", nameof(protocols));
        Unique(sessions, session => session.Id, "session", nameof(sessions));
        foreach (var session in Sessions)
        {
            if (!_athletes.ContainsKey(session.AthleteId))
                throw new ArgumentException($"Session '{session.Id}' names athlete '{session.AthleteId}', who is not in the squad.", nameof(sessions));
            if (!protocolIds.ContainsKey(session.Protocol.Id))
                throw new ArgumentException($"Session '{session.Id}' names protocol '{session.Protocol.Id}', which is not in the squad.", nameof(sessions));
        }

        _sessions = Sessions.ToLookup(session => session.AthleteId);
    }

    /// <summary>Name of the squad.</summary>
    public string Name { get; }

    /// <summary>Its athletes.</summary>
    public IReadOnlyList<Athlete> Athletes { get; }

    /// <summary>Protocol versions in use.</summary>
    public IReadOnlyList<Protocol> Protocols { get; }

    /// <summary>All sessions by date and occasion, void ones included.</summary>
    public IReadOnlyList<Session> Sessions { get; }

    /// <summary>What surrounded training, per athlete and date.</summary>
    public IReadOnlyList<DayContext> Contexts { get; init; } = [];

    /// <summary>Bouts, weigh-ins and head knocks.</summary>
    public IReadOnlyList<AthleteEvent> Events { get; init; } = [];

    /// <summary>Training blocks.</summary>
    public IReadOnlyList<TrainingBlock> Blocks { get; init; } = [];

    /// <summary>Federations' age groups, of every valid-from date.</summary>
    public IReadOnlyList<AgeGroup> AgeGroups { get; init; } = [];

    /// <summary>Federations' weight classes, of every valid-from date.</summary>
    public IReadOnlyList<WeightClass> WeightClasses { get; init; } = [];

    /// <summary>The athlete with an id, code, display name or alias (case and surrounding spaces do not matter).</summary>
    /// <exception cref="ArgumentException">Nobody, or more than one, answers to it; the message lists the codes.</exception>
    public Athlete Athlete(string idCodeOrName)
    {
        var text = Require.Text(idCodeOrName).Trim();
        if (_athletes.TryGetValue(text, out var byId)) return byId;
        var found = Athletes.Where(athlete => Named(athlete.Code, text) || Named(athlete.DisplayName, text) || athlete.Aliases.Any(alias => Named(alias, text))).ToList();
        return found.Count switch
        {
            1 => found[0],
            0 => throw new ArgumentException($"Nobody in the squad answers to '{text}'. {Known("Codes", Athletes.Select(athlete => athlete.Code))}", nameof(idCodeOrName)),
            _ => throw new ArgumentException($"'{text}' fits more than one athlete: {string.Join(", ", found.Select(athlete => athlete.Code))}.", nameof(idCodeOrName)),
        };
    }

    /// <summary>The protocol with an id or name.</summary>
    /// <exception cref="ArgumentException">There is none; the message lists the ids.</exception>
    public Protocol Protocol(string idOrName) =>
        Protocols.FirstOrDefault(protocol => protocol.Id == idOrName)
        ?? Protocols.FirstOrDefault(protocol => Named(protocol.Name, idOrName))
        ?? throw new ArgumentException($"There is no protocol '{idOrName}'. {Known("Protocols", Protocols.Select(protocol => protocol.Id))}", nameof(idOrName));

    /// <summary>The training block with an id or name.</summary>
    /// <exception cref="ArgumentException">There is none; the message lists the ids.</exception>
    public TrainingBlock Block(string idOrName) =>
        Blocks.FirstOrDefault(block => block.Id == idOrName)
        ?? Blocks.FirstOrDefault(block => Named(block.Name, idOrName))
        ?? throw new ArgumentException($"There is no block '{idOrName}'. {Known("Blocks", Blocks.Select(block => block.Id))}", nameof(idOrName));

    /// <summary>Sessions of one athlete by date and occasion, void ones included.</summary>
    public IReadOnlyList<Session> SessionsOf(string athleteId) => [.. _sessions[athleteId]];

    private static string Known(string what, IEnumerable<string> names)
    {
        const int shown = 30;
        var all = names.ToList();
        var more = all.Count <= shown ? "" : string.Create(CultureInfo.InvariantCulture, $" and {all.Count - shown} more");
        return $"{what}: {(all.Count == 0 ? "none yet" : string.Join(", ", all.Take(shown)))}{more}.";
    }

    private static bool Named(string name, string text) => string.Equals(name.Trim(), text.Trim(), StringComparison.OrdinalIgnoreCase);

    private static Dictionary<string, T> Unique<T>(IReadOnlyList<T> items, Func<T, string> id, string kind, string parameter)
    {
        var byId = new Dictionary<string, T>(StringComparer.Ordinal);
        foreach (var item in items)
        {
            if (!byId.TryAdd(id(item), item)) throw new ArgumentException($"The {kind} id '{id(item)}' is used twice.", parameter);
        }

        return byId;
    }
}
