using SquadAnalytics.Internals;

namespace SquadAnalytics.Import;

/// <summary>Settles who is meant by every name. A name that is not exactly known is a decision; names are never merged in silence.</summary>
internal sealed class NameSettling
{
    private const string NewAthlete = "new athlete";
    private const string SomebodyElse = "athlete CODE";

    // Lines under a list of athletes that are often no athlete.
    private static readonly HashSet<string> SummaryWords =
    [
        "AVERAGE", "AVG", "MEAN", "MEDIAN", "TOTAL", "SUM", "BEST", "FASTEST", "SLOWEST", "MIN", "MAX", "SD", "MITTEL", "MITTELWERT", "SCHNITT", "DURCHSCHNITT", "SUMME", "MOYENNE", "PROMEDIO", "MEDIA", "SREDNIA", "ORTALAMA",
    ];

    private readonly RawImport _raw;
    private readonly ImportOptions _options;
    private readonly Decisions _decisions;
    private readonly NameMatcher _matcher;
    private readonly NewAthletes _new;
    private readonly Dictionary<string, string> _aliases = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _firstSpelling = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Athlete> _settled = new(StringComparer.Ordinal);

    private NameSettling(RawImport raw, ImportOptions options, Decisions decisions)
    {
        _raw = raw;
        _options = options;
        _decisions = decisions;
        var known = options.Squad?.Athletes ?? [];
        _matcher = new NameMatcher(known);
        _new = new NewAthletes(known);
    }

    /// <summary>Gives every draft its athlete where it is known who that is.</summary>
    public static SettledNames Apply(RawImport raw, ImportOptions options, Decisions decisions)
    {
        var settling = new NameSettling(raw, options, decisions);
        var byName = raw.Drafts.Where(draft => draft.Rows.Any(row => !row.IsRefused)).ToLookup(draft => draft.Texts.Name);
        foreach (var drafts in byName)
        {
            if (settling.Who(raw.Names[drafts.Key], drafts) is not { } athlete) continue;
            foreach (var draft in drafts) draft.Athlete = athlete;
        }

        return new SettledNames(settling._new.Athletes, [.. settling.Confirmed()]);
    }

    private Athlete? Who(string name, IEnumerable<SessionDraft> drafts)
    {
        var exact = _matcher.Exact(name);
        if (exact is [var only]) return only;
        var suggested = exact.Count > 0 ? exact : _matcher.Suggestions(name);
        var spelledBefore = suggested.Count > 0 ? null : NameMatcher.Keys(name).Select(key => _firstSpelling.GetValueOrDefault(key)).OfType<string>().FirstOrDefault();
        foreach (var key in NameMatcher.Keys(name)) _firstSpelling.TryAdd(key, name);

        var needsNobody = suggested.Count == 0 && spelledBefore is null && !SummaryWords.Contains(NameKey.Of(name));
        if (needsNobody && (_options.Squad is null || _options.AcceptNewAthletes)) return Settle(name, _new.Add(name));

        string[] before = spelledBefore is null ? [] : [SameAs(spelledBefore)], others = _options.Squad is { Athletes.Count: > 0 } ? [SomebodyElse] : [];
        List<string> choices = [.. suggested.Select(Label), .. before, .. others, NewAthlete];
        var answer = _decisions.Ask($"name:{name}", DecisionKind.Name, Question(name, suggested, spelledBefore), choices, drafts.SelectMany(draft => draft.Rows).Where(row => !row.IsRefused), others.FirstOrDefault(), text => WithCode(text) is not null);
        if (answer is null) return null;
        if (answer == NewAthlete) return Settle(name, _new.Add(name));
        if (spelledBefore is not null && answer == SameAs(spelledBefore)) return _settled.GetValueOrDefault(spelledBefore) is { } first ? Settle(name, _new.AddSpelling(first, name)) : null;
        var athlete = suggested.FirstOrDefault(candidate => Label(candidate) == answer) ?? WithCode(answer)!;
        if (exact.Count == 0) _aliases[name] = athlete.Id;
        return Settle(name, athlete);
    }

    private Athlete? WithCode(string answer) => _options.Squad?.Athletes.FirstOrDefault(athlete => string.Equals(answer, SomebodyElse.Replace("CODE", athlete.Code, StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase));

    private Athlete Settle(string name, Athlete athlete) => _settled[name] = athlete;

    private IEnumerable<Athlete> Confirmed() =>
        from athlete in _options.Squad?.Athletes ?? []
        let spellings = _aliases.Where(alias => alias.Value == athlete.Id).Select(alias => alias.Key).ToList()
        where spellings.Count > 0
        select athlete with { Aliases = [.. athlete.Aliases, .. spellings] };

    private static string Label(Athlete athlete) => $"{athlete.DisplayName} [{athlete.Code}]";

    private static string SameAs(string spelling) => $"same as '{spelling}'";

    private static string Question(string name, IReadOnlyList<Athlete> suggested, string? spelledBefore)
    {
        if (suggested.Count > 0) return $"Who is '{name}'? It resembles {string.Join(", ", suggested.Select(Label))}.";
        return spelledBefore is null ? $"Who is '{name}'? Nobody in the squad has this name." : $"Is '{name}' the athlete who is also written '{spelledBefore}'?";
    }
}
