namespace SquadAnalytics.Import;

/// <summary>Distinct texts in the order met, each kept once and known by its number.</summary>
internal sealed class TextTable
{
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly List<string> _texts = [];

    /// <summary>Stands for "no text".</summary>
    public const int None = -1;

    public int Count => _texts.Count;

    public string this[int number] => _texts[number];

    /// <summary>The number of a text; <see cref="None"/> for a blank one.</summary>
    public int Number(string text)
    {
        if (_numbers.TryGetValue(text, out var known)) return known;
        var trimmed = text.Trim();
        if (trimmed.Length == 0) return None;
        if (!_numbers.TryGetValue(trimmed, out var number))
        {
            number = _texts.Count;
            _texts.Add(trimmed);
            _numbers.Add(trimmed, number);
        }

        return number;
    }

    public bool Contains(string text) => _numbers.ContainsKey(text.Trim());

    /// <summary>The text with a number, or null for <see cref="None"/>.</summary>
    public string? Text(int number) => number == None ? null : _texts[number];
}
