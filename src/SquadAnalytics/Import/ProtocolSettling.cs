using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>Settles the protocol of every draft: its own, the title's, the one stated for all, the only one there is, or a person's.</summary>
internal static class ProtocolSettling
{
    /// <summary>Gives the drafts their protocols and returns those that are not in the squad.</summary>
    public static IReadOnlyList<Protocol> Apply(RawImport raw, ImportOptions options, Decisions decisions)
    {
        if (options.Squad is not { Protocols.Count: > 0 } squad) return Provisional(raw, options);
        var stated = options.Protocol is null ? null : squad.Protocol(options.Protocol);
        var unsettled = new List<(SessionDraft Draft, string? Text)>();
        var strangers = new HashSet<Block>();
        var assumed = 0;
        foreach (var draft in raw.Drafts)
        {
            var cell = raw.Protocols.Text(draft.Texts.Protocol);
            var title = draft.Block.Title;
            draft.Protocol = cell is not null ? Named(squad, cell) : title is { IsLabelled: true, Protocol: { } label } ? Named(squad, label) : Within(squad, title.Protocol);
            if (cell is null && title.Sheet is { } sheet)
            {
                var printed = squad.Protocols.Where(sheet.IsFor).ToList();
                if (printed.Count == 0) strangers.Add(draft.Block);
                else if (draft.Protocol is null && !title.IsLabelled) draft.Protocol = printed is [var only] ? only : null;
                else if (draft.Protocol is not null && !printed.Contains(draft.Protocol)) draft.Protocol = null;
                if (draft.Protocol is null && printed.Count > 0)
                {
                    unsettled.Add((draft, title.Protocol));
                    continue;
                }
            }

            if (draft.Protocol is not null) continue;
            if (cell is null && !title.IsLabelled) draft.Protocol = stated;
            if (draft.Protocol is not null) continue;
            if (cell is null && !title.IsLabelled && squad.Protocols.Count == 1)
            {
                draft.Protocol = squad.Protocols[0];
                assumed++;
                continue;
            }

            unsettled.Add((draft, cell ?? (title.IsLabelled ? title.Protocol : null)));
        }

        raw.Notes.AddRange(strangers.Select(static block => $"{block.InWords}: the sheet's code {block.Title.Sheet} is of a protocol that the squad does not have, or has changed since."));
        if (assumed > 0) raw.Notes.Add(string.Create(CultureInfo.InvariantCulture, $"Tests that name no protocol, for which the squad's only one, '{squad.Protocols[0].Name}', was taken: {assumed}."));
        foreach (var drafts in unsettled.GroupBy(entry => (entry.Draft.Block, entry.Text))) Ask(squad, drafts.Key.Block, drafts.Key.Text, [.. drafts.Select(entry => entry.Draft)], decisions);
        return [];
    }

    private static void Ask(Squad squad, Block block, string? text, IReadOnlyList<SessionDraft> drafts, Decisions decisions)
    {
        var answer = decisions.Ask(
            text is null ? $"protocol:{block.Key}" : $"protocol:{block.Key}:{text}",
            DecisionKind.Protocol,
            text is null ? $"{block.InWords}: which protocol was done? None is written." : $"{block.InWords}: which protocol is '{text}'? None of the squad's has this name.",
            squad.Protocols.Select(Label),
            drafts.SelectMany(draft => draft.Rows).Where(row => !row.IsRefused));
        if (answer is null) return;
        foreach (var draft in drafts) draft.Protocol = squad.Protocols.First(protocol => Label(protocol) == answer);
    }

    // The name of the protocol, unless a scaled variant shares it.
    private static string Label(Protocol protocol) => $"{protocol.Name} [{protocol.Id}]";

    private static Protocol? Named(Squad squad, string text)
    {
        var found = squad.Protocols.Where(protocol => string.Equals(protocol.Id, text, StringComparison.OrdinalIgnoreCase) || string.Equals(protocol.Name, text, StringComparison.OrdinalIgnoreCase)).ToList();
        return found.Count == 1 ? found[0] : null;
    }

    // The longest name or id contained in a title: "Quay circuit juniors" names the variant, not the circuit.
    private static Protocol? Within(Squad squad, string? title)
    {
        if (title is null) return null;
        var words = $" {NameKey.Of(title)} ";
        var found = squad.Protocols
            .SelectMany(protocol => new[] { NameKey.Of(protocol.Name), NameKey.Of(protocol.Id) }.Select(key => (Protocol: protocol, Key: key)))
            .Where(entry => entry.Key.Length > 0 && words.Contains($" {entry.Key} ", StringComparison.Ordinal))
            .ToList();
        if (found.Count == 0) return null;
        var longest = found.Max(entry => entry.Key.Length);
        var named = found.Where(entry => entry.Key.Length == longest).Select(entry => entry.Protocol).Distinct().ToList();
        return named.Count == 1 ? named[0] : null;
    }

    // With no protocol to match, each name written as one (or the lack of it) stands for a test of as many sets as were written.
    private static List<Protocol> Provisional(RawImport raw, ImportOptions options)
    {
        List<Protocol> protocols = [];
        foreach (var drafts in raw.Drafts.GroupBy(draft => raw.Protocols.Text(draft.Texts.Protocol) ?? (draft.Block.Title.IsLabelled ? draft.Block.Title.Protocol : null) ?? options.Protocol))
        {
            var sets = drafts.Max(draft => SetsOf(raw, draft));
            if (sets < 2)
            {
                foreach (var draft in drafts) draft.Refuse(new RowFault(null, "a test has at least two sets", "two or more sets for each athlete"));
                continue;
            }

            var name = drafts.Key ?? string.Create(CultureInfo.InvariantCulture, $"Test of {sets} sets");
            var id = FreeId(protocols, NameKey.Of(name).Replace(' ', '-').ToLowerInvariant());
            var stations = StationsOf(raw, drafts);
            if (stations.Count > 0) raw.Notes.Add($"'{name}': how often each station is repeated is not written; 1 was entered.");
            var protocol = new Protocol(id, name, stations, sets, null);
            protocols.Add(protocol);
            foreach (var draft in drafts) draft.Protocol = protocol;
        }

        return protocols;
    }

    private static int SetsOf(RawImport raw, SessionDraft draft)
    {
        var header = draft.Block.Header;
        if (header.SetTimes.Count + header.StationTimes.Count > 0) return header.SetTimes.Concat(header.StationTimes).Max(column => column.Set);
        return raw.EntriesOf(draft).Select(entry => (int)entry.Set).DefaultIfEmpty(0).Max();
    }

    // Stations in the order met; where they are only numbered, by number.
    private static List<Station> StationsOf(RawImport raw, IEnumerable<SessionDraft> drafts)
    {
        var blocks = drafts.Select(draft => draft.Block).Distinct().ToList();
        if (blocks.Find(block => block.StationNames.Count > 0) is { } named) return [.. named.StationNames.Select(name => new Station(raw.Stations[-1 - name], 1))];
        var most = drafts.SelectMany(draft => raw.EntriesOf(draft)).Select(entry => (int)entry.Station).DefaultIfEmpty(0).Max();
        return [.. Enumerable.Range(1, Math.Max(most, 0)).Select(number => new Station(string.Create(CultureInfo.InvariantCulture, $"station {number}"), 1))];
    }

    private static string FreeId(List<Protocol> protocols, string wanted)
    {
        var id = wanted.Length == 0 ? "test" : wanted;
        for (var number = 2; protocols.Exists(protocol => protocol.Id == id); number++) id = string.Create(CultureInfo.InvariantCulture, $"{wanted}-{number}");
        return id;
    }
}
