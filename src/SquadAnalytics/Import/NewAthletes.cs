using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>Makes athletes for names that the squad does not have, with ids and codes that are still free.</summary>
internal sealed class NewAthletes(IReadOnlyList<Athlete> known)
{
    private readonly HashSet<string> _ids = known.Select(athlete => athlete.Id).ToHashSet(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _codes = known.Select(athlete => athlete.Code).ToHashSet(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> _lastCode = new(StringComparer.Ordinal);
    private readonly List<Athlete> _athletes = [];
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private int _lastId = known.Count;

    /// <summary>The athletes made, in the order met.</summary>
    public IReadOnlyList<Athlete> Athletes => _athletes;

    public Athlete Add(string name)
    {
        var athlete = new Athlete(FreeId(), name, FreeCode(name));
        _places[athlete.Id] = _athletes.Count;
        _athletes.Add(athlete);
        return athlete;
    }

    /// <summary>Notes another spelling of an athlete made before.</summary>
    public Athlete AddSpelling(Athlete athlete, string name)
    {
        if (!_places.TryGetValue(athlete.Id, out var place)) return athlete;
        return _athletes[place] = _athletes[place] with { Aliases = [.. _athletes[place].Aliases, name] };
    }

    private string FreeId()
    {
        string id;
        do
        {
            _lastId++;
            id = string.Create(CultureInfo.InvariantCulture, $"athlete-{_lastId:000}");
        }
        while (!_ids.Add(id));
        return id;
    }

    // Initials, with a number where they are taken.
    private string FreeCode(string name)
    {
        var initials = string.Concat(NameKey.Of(name).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(word => char.IsSurrogate(word[0]) ? 'X' : word[0]).Take(3));
        if (initials.Length == 0) initials = "X";
        if (_codes.Add(initials)) return initials;
        string code;
        var number = _lastCode.GetValueOrDefault(initials, 1);
        do
        {
            number++;
            code = string.Create(CultureInfo.InvariantCulture, $"{initials}{number}");
        }
        while (!_codes.Add(code));
        _lastCode[initials] = number;
        return code;
    }
}
