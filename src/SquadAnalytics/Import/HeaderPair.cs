using System.Globalization;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Import;

/// <summary>Headers on two lines: sets above the stations in them, "set" above its numbers, or units below.</summary>
internal static partial class HeaderPair
{
    /// <summary>Reads two lines as one line of headers: what stands above goes on to the right until the next text, and the text below completes it.</summary>
    /// <returns>Null where the lines are something else: a header and its first row, or a title and a header.</returns>
    public static HeaderLine? TryRead(SourceLine above, SourceLine below)
    {
        if (below.Number != above.Number + 1 || above.Cells.Count < 2 || below.Cells.Any(IsEntry)) return null;
        var width = Math.Max(above.Cells.Count, below.Cells.Count);
        var cells = new List<SourceCell>(width);
        var (group, covered, widest) = ("", 0, 0);
        var numbers = new List<int>();
        for (var column = 0; column < width; column++)
        {
            var (upper, lower) = (above[column].Text.Trim(), below[column].Text.Trim());
            if (upper.Length > 0)
            {
                if (!CountsFromOne(numbers)) return null;
                (group, covered) = (upper, 0);
                numbers.Clear();
            }

            if (lower.Length > 0 && lower != group) covered++;
            widest = Math.Max(widest, covered);
            if (int.TryParse(lower, NumberStyles.None, CultureInfo.InvariantCulture, out var number)) numbers.Add(number);
            cells.Add(new SourceCell(Joined(upper.Length > 0 || lower.Length > 0 ? group : "", lower)));
        }

        return widest >= 2 && CountsFromOne(numbers) && HeaderLine.TryRead(new SourceLine(above.Number, cells)) is { Problem: null } header ? header : null;
    }

    /// <summary>Whether a line below the headers says in which unit the columns are, and nothing else.</summary>
    public static bool IsUnits(SourceLine header, SourceLine below) =>
        below.Number == header.Number + 1 && below.Texts.Any() && below.Texts.All(text => Unit().IsMatch(text));

    // Numbers below a group are headers only where they count 1, 2, 3: anything else is a row of times.
    private static bool CountsFromOne(List<int> numbers) => numbers.SequenceEqual(Enumerable.Range(1, numbers.Count));

    private static bool IsEntry(SourceCell cell) =>
        cell.Storage != CellStorage.Plain || (TimeEntry.Parse(cell.Text, DecimalMark.Comma).Kind is not (EntryKind.Unreadable or EntryKind.NotRecorded) && !ColumnHeader.IsBareNumber(cell.Text.Trim()));

    // "Set 1" above "S2" or "2" is the second station; "Set" above "2" is the second set.
    private static string Joined(string group, string lower)
    {
        if (lower.Length == 0 || lower == group) return group;
        if (group.Length == 0) return lower;
        return NumberedSet().IsMatch(group) && ShortStation().Match(lower) is { Success: true } station ? $"{group} station {station.Groups["n"].Value}" : $"{group} {lower}";
    }

    [GeneratedRegex(@"\d\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex NumberedSet();

    [GeneratedRegex("^(s|st|stn)?[ .]?(?<n>[1-9][0-9]?)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex ShortStation();

    [GeneratedRegex(@"^[(\[]?\s*(s|sec|secs|second|seconds|sek|sekunden|segundos|secondes|m{1,2}:ss|min:s(ec)?|h{1,2}:mm:ss|°?c|dd[./-]mm[./-]yyyy|yyyy-mm-dd)\.?\s*[)\]]?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Unit();
}
