namespace SquadAnalytics.Storage;

/// <summary>All that the tables of a logbook hold at one moment.</summary>
internal sealed record LogbookContent(Squad Squad, IReadOnlyList<HealthNote> HealthNotes, IReadOnlyList<HeldRow> HeldRows, IReadOnlyList<LogbookExport> Exports)
{
    public static LogbookContent Empty(string squadName) => new(new Squad(squadName, [], [], []), [], [], []);

    /// <summary>The content after a change.</summary>
    /// <exception cref="ProtocolInUseException">A protocol version that sessions used would change.</exception>
    /// <exception cref="ArgumentException">The change refers to something that is not there, or breaks a rule of the tables.</exception>
    public LogbookContent After(LogbookChange change)
    {
        CheckProtocols(change);
        var protocols = Put(Squad.Protocols, change.Protocols, protocol => protocol.Id, change.RemovedProtocolIds);
        var protocolById = protocols.ToDictionary(protocol => protocol.Id, StringComparer.Ordinal);
        var sessions = Put(Squad.Sessions, change.Sessions, session => session.Id);
        if (change.Protocols.Count > 0) sessions = [.. sessions.Select(session => OnProtocol(session, protocolById))];
        var squad = new Squad(change.SquadName ?? Squad.Name, Put(Squad.Athletes, change.Athletes, athlete => athlete.Id), protocols, sessions)
        {
            Contexts = Put(Squad.Contexts, change.Contexts, context => (context.AthleteId, context.Date)),
            Events = Put(Squad.Events, change.Events, happened => happened.Id, change.RemovedEventIds),
            Blocks = Put(Squad.Blocks, change.Blocks, block => block.Id, change.RemovedBlockIds),
            AgeGroups = change.AgeGroups ?? Squad.AgeGroups,
            WeightClasses = change.WeightClasses ?? Squad.WeightClasses,
        };
        var after = new LogbookContent(
            squad,
            Put(HealthNotes, change.HealthNotes, note => note.Id, change.RemovedHealthNoteIds),
            Put(HeldRows, change.HeldRows, row => row.Id, change.RemovedHeldRowIds),
            Exports);
        ContentRules.Check(after);
        return after;
    }

    /// <summary>The content without one athlete and everything that is known of them.</summary>
    public LogbookContent Without(string athleteId) => new(
        new Squad(Squad.Name, [.. Squad.Athletes.Where(athlete => athlete.Id != athleteId)], Squad.Protocols, [.. Squad.Sessions.Where(session => session.AthleteId != athleteId)])
        {
            Contexts = [.. Squad.Contexts.Where(context => context.AthleteId != athleteId)],
            Events = [.. Squad.Events.Where(happened => happened.AthleteId != athleteId)],
            Blocks = [.. Squad.Blocks.Where(block => !block.Members.SequenceEqual([athleteId])).Select(block => block.Members.Contains(athleteId) ? block with { Members = [.. block.Members.Where(member => member != athleteId)] } : block)],
            AgeGroups = Squad.AgeGroups,
            WeightClasses = Squad.WeightClasses,
        },
        [.. HealthNotes.Where(note => note.AthleteId != athleteId)],
        HeldRows,
        [.. Exports.Where(export => !export.AthleteIds.SequenceEqual([athleteId])).Select(export => export.AthleteIds.Contains(athleteId) ? export with { AthleteIds = [.. export.AthleteIds.Where(id => id != athleteId)] } : export)]);

    private void CheckProtocols(LogbookChange change)
    {
        var used = Squad.Sessions.Concat(change.Sessions).Select(session => session.Protocol.Id).ToHashSet(StringComparer.Ordinal);
        var removed = change.RemovedProtocolIds.FirstOrDefault(used.Contains);
        if (removed is not null) throw new ProtocolInUseException(removed);
        var current = Squad.Protocols.ToDictionary(protocol => protocol.Id, StringComparer.Ordinal);
        var usedNow = Squad.Sessions.Select(session => session.Protocol.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var protocol in change.Protocols.Where(protocol => usedNow.Contains(protocol.Id)))
        {
            if (!OnlyAddsBands(current[protocol.Id], protocol)) throw new ProtocolInUseException(protocol.Id);
        }

        var known = Squad.Protocols.Concat(change.Protocols).GroupBy(protocol => protocol.Id, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Last(), StringComparer.Ordinal);
        foreach (var session in change.Sessions)
        {
            if (known.TryGetValue(session.Protocol.Id, out var protocol) && !ReferenceEquals(protocol, session.Protocol) && !SameTest(protocol, session.Protocol))
                throw new ArgumentException($"Session '{session.Id}' was made with another definition of protocol '{protocol.Id}' than the logbook's.", nameof(change));
        }
    }

    private static bool OnlyAddsBands(Protocol before, Protocol after) => SameTest(before, after) && before.Bands.All(after.Bands.Contains);

    private static bool SameTest(Protocol one, Protocol other) =>
        one.Key == other.Key && one.Name == other.Name && one.VariantOf == other.VariantOf;

    private static Session OnProtocol(Session session, Dictionary<string, Protocol> protocols) =>
        protocols.TryGetValue(session.Protocol.Id, out var protocol) && !ReferenceEquals(protocol, session.Protocol) ? session with { Protocol = protocol } : session;

    private static IReadOnlyList<T> Put<T>(IReadOnlyList<T> items, IReadOnlyList<T> changed, Func<T, string> id, IReadOnlyList<string> removed) =>
        Put(removed.Count == 0 ? items : [.. items.Where(item => !removed.Contains(id(item)))], changed, id);

    /// <summary>Replaces items of the same key in their place, and adds the others at the end.</summary>
    private static IReadOnlyList<T> Put<T, TKey>(IReadOnlyList<T> items, IReadOnlyList<T> changed, Func<T, TKey> key)
        where TKey : notnull
    {
        if (changed.Count == 0) return items;
        var byKey = new Dictionary<TKey, T>();
        foreach (var item in changed)
        {
            if (!byKey.TryAdd(key(item), item)) throw new ArgumentException($"The change holds '{key(item)}' twice.", nameof(changed));
        }

        var result = items.Select(item => byKey.Remove(key(item), out var newer) ? newer : item).ToList();
        result.AddRange(changed.Where(item => byKey.ContainsKey(key(item))));
        return result;
    }
}
