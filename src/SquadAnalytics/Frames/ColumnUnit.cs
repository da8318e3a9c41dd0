namespace SquadAnalytics.Frames;

/// <summary>Units at the end of column names: the same endings as in the logbook's files.</summary>
internal static class ColumnUnit
{
    private static readonly (string Ending, string Unit)[] Endings =
    [
        ("_s_per_set", "s/set"), ("_percent_per_set", "%/set"), ("_s_per_week", "s/week"), ("_percent_per_week", "%/week"),
        ("_percent", "%"), ("_kg", "kg"), ("_min", "min"), ("_h", "h"), ("_c", "°C"), ("_s", "s"),
    ];

    /// <summary>The unit as printed, or null.</summary>
    public static string? Of(string name) => Find(name).Unit;

    /// <summary>The name in words, without its unit.</summary>
    public static string Words(string name, string? unit)
    {
        var found = Find(name);
        var words = unit is null || found.Ending is null ? name : name[..^found.Ending.Length];
        return words.Replace('_', ' ').Trim();
    }

    /// <summary>The ending that names a unit of this library; empty for a plain number.</summary>
    public static string Ending(Unit unit)
    {
        var symbol = unit.Symbol();
        return Array.Find(Endings, one => one.Unit == symbol).Ending ?? "";
    }

    private static (string? Ending, string? Unit) Find(string name)
    {
        var found = Array.Find(Endings, one => name.Length > one.Ending.Length && name.EndsWith(one.Ending, StringComparison.OrdinalIgnoreCase));
        return (found.Ending, found.Unit);
    }
}
