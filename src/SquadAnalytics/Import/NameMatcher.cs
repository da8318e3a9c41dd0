namespace SquadAnalytics.Import;

/// <summary>Finds who a written name may mean. Only the very same text is a match; everything else is a suggestion.</summary>
internal sealed class NameMatcher
{
    // Beyond this size, comparing every unknown name with every athlete letter by letter costs more than it helps.
    private const int MostAthletesCompared = 2000;

    private readonly ILookup<string, Athlete> _exact;
    private readonly ILookup<string, Athlete> _near;
    private readonly IReadOnlyList<Athlete> _athletes;

    public NameMatcher(IReadOnlyList<Athlete> athletes)
    {
        _athletes = athletes;
        var spellings = athletes.SelectMany(athlete => Spellings(athlete).Select(spelling => (Spelling: spelling, Athlete: athlete))).ToList();
        _exact = spellings.ToLookup(entry => Same(entry.Spelling), entry => entry.Athlete, StringComparer.Ordinal);
        _near = spellings.SelectMany(entry => Keys(entry.Spelling).Select(key => (Key: key, entry.Athlete))).ToLookup(entry => entry.Key, entry => entry.Athlete, StringComparer.Ordinal);
    }

    /// <summary>Athletes whose name, code, id or confirmed other spelling is exactly this text.</summary>
    public IReadOnlyList<Athlete> Exact(string name) => [.. _exact[Same(name)].Distinct()];

    /// <summary>Athletes whom the text resembles, the most alike first: other case, spacing, accents or order; one letter off; part of the name.</summary>
    public IReadOnlyList<Athlete> Suggestions(string name)
    {
        var keys = Keys(name).ToList();
        var same = keys.SelectMany(key => _near[key]).Distinct().ToList();
        if (same.Count > 0 || _athletes.Count > MostAthletesCompared) return same;
        return [.. _athletes.Where(athlete => Keys(athlete.DisplayName).Concat(athlete.Aliases.SelectMany(Keys)).Any(known => keys.Any(key => Resembles(key, known))))];
    }

    /// <summary>The keys under which a name may be found: as written and, with one comma, turned around.</summary>
    public static IEnumerable<string> Keys(string name)
    {
        if (NameKey.Of(name) is { Length: > 0 } key) yield return key;
        if (NameKey.OfTurned(name) is { } turned) yield return turned;
    }

    private static IEnumerable<string> Spellings(Athlete athlete) => [athlete.DisplayName, athlete.Code, athlete.Id, .. athlete.Aliases];

    private static string Same(string name)
    {
        var text = name.Trim();
        try
        {
            return text.Normalize();
        }
        catch (ArgumentException)
        {
            return text;
        }
    }

    private static bool Resembles(string key, string known)
    {
        if (key.Length >= 4 && Math.Abs(key.Length - known.Length) <= 1 && EditsAtMostOne(key, known)) return true;
        var words = key.Split(' ');
        var knownWords = known.Split(' ');
        if (words.Length == 1) return knownWords.Length > 1 && knownWords.Contains(key);
        return words.Length == knownWords.Length && words.Zip(knownWords).All(pair => pair.First == pair.Second || (pair.First.Length == 1 && pair.Second.StartsWith(pair.First, StringComparison.Ordinal)));
    }

    // One letter more, fewer, other, or two neighbours swapped.
    private static bool EditsAtMostOne(string left, string right)
    {
        var (shorter, longer) = left.Length <= right.Length ? (left, right) : (right, left);
        var start = 0;
        while (start < shorter.Length && shorter[start] == longer[start]) start++;
        if (shorter.Length == longer.Length)
        {
            return start == shorter.Length
                || shorter.AsSpan(start + 1).SequenceEqual(longer.AsSpan(start + 1))
                || (start + 1 < shorter.Length && shorter[start] == longer[start + 1] && shorter[start + 1] == longer[start] && shorter.AsSpan(start + 2).SequenceEqual(longer.AsSpan(start + 2)));
        }

        return shorter.AsSpan(start).SequenceEqual(longer.AsSpan(start + 1));
    }
}
