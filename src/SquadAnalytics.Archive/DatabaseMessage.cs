using System.Globalization;
using System.Text.RegularExpressions;
using DuckDB.NET.Data;

namespace SquadAnalytics.Archive;

/// <summary>Reads what the database says of a query that failed: the message, and the place, which it draws with a caret below a line.</summary>
internal static partial class DatabaseMessage
{
    public static QueryException Read(DuckDBException error)
    {
        var text = error.Message;
        QueryPlace? place = null;
        if (Drawing().Match(text) is { Success: true } drawn)
        {
            place = new QueryPlace(int.Parse(drawn.Groups["line"].ValueSpan, CultureInfo.InvariantCulture), Math.Max(1, drawn.Groups["caret"].Length - drawn.Groups["head"].Length + 1));
            text = text[..drawn.Index];
        }

        text = Kind().Replace(text, "").Trim().ReplaceLineEndings(" ");
        if (text.Contains("Out of Memory", StringComparison.OrdinalIgnoreCase) || error.Message.StartsWith("Out of Memory", StringComparison.OrdinalIgnoreCase))
            text = "The query needs more memory than it may have; group or filter earlier. " + text;
        return new QueryException(text, place, error);
    }

    [GeneratedRegex(@"\s*\n(?<head>LINE (?<line>\d+): )[^\n]*\n(?<caret> *)\^", RegexOptions.CultureInvariant)]
    private static partial Regex Drawing();

    [GeneratedRegex("^[A-Za-z ]+ Error: ", RegexOptions.CultureInvariant)]
    private static partial Regex Kind();
}
