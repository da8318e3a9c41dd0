using System.Globalization;
using System.Text;

namespace SquadAnalytics.Archive;

/// <summary>A place in the text of a query.</summary>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column within the line, from 1.</param>
public sealed record QueryPlace(int Line, int Column)
{
    /// <summary>Line and column.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"line {Line}, column {Column}");

    /// <summary>The place at an offset that the database counts in bytes of UTF-8; null for the value by which it says that it knows none.</summary>
    internal static QueryPlace? At(string sql, ulong offset)
    {
        var bytes = Encoding.UTF8.GetBytes(sql);
        if (offset > (ulong)bytes.Length) return null;
        var before = Encoding.UTF8.GetString(bytes, 0, (int)offset);
        return new QueryPlace(before.Count(static letter => letter == '\n') + 1, before.Length - before.LastIndexOf('\n'));
    }
}
