using System.Text.RegularExpressions;
using Microsoft.DotNet.Interactive;

namespace SquadAnalytics.Notebooks.Sql;

/// <summary>What the text of a query says besides the query.</summary>
internal static partial class SqlText
{
    /// <summary>The title of the result: the comment in the first line, as in <c>-- Best totals of the season</c>; null where there is none.</summary>
    public static string? Title(string code)
    {
        var first = code.Split('\n').Select(static line => line.Trim()).FirstOrDefault(static line => line.Length > 0);
        return first is not null && first.StartsWith("--", StringComparison.Ordinal) && first.TrimStart('-').Trim() is { Length: > 0 } title ? title : null;
    }

    /// <summary>The name that the first line gives to the result, as in <c>#!sql --name evening</c>; null where there is none.</summary>
    public static string? ResultName(string code) => Naming().Match(code) is { Success: true } naming ? naming.Groups[1].Value : null;

    /// <summary>The word at a place; empty where there is none.</summary>
    public static string WordAt(string code, LinePosition place)
    {
        var line = code.Split('\n').ElementAtOrDefault(place.Line) ?? "";
        var start = Math.Clamp(place.Character, 0, line.Length);
        var end = start;
        while (start > 0 && IsPart(line[start - 1])) start--;
        while (end < line.Length && IsPart(line[end])) end++;
        return line[start..end];
    }

    private static bool IsPart(char letter) => char.IsLetterOrDigit(letter) || letter == '_';

    [GeneratedRegex(@"^\s*#!sql\s+--name\s+(\w+)", RegexOptions.CultureInvariant)]
    private static partial Regex Naming();
}
