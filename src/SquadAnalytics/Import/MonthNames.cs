using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>Names of months in the languages of the clipboards; a name that means different months in two of them is left out.</summary>
internal static class MonthNames
{
    private static readonly string[] Languages =
        ["en", "de", "fr", "es", "it", "pt", "nl", "sv", "nb", "da", "fi", "pl", "cs", "sk", "hu", "ro", "tr", "ru", "uk", "bg", "el", "hr", "sr", "lt", "lv", "et"];

    private static readonly Dictionary<string, int?> Months = Gather();

    /// <summary>Number of the month with a name or an abbreviation, or null.</summary>
    public static int? Find(string name) => Months.GetValueOrDefault(NameKey.Of(name));

    private static Dictionary<string, int?> Gather()
    {
        var months = new Dictionary<string, int?>(StringComparer.Ordinal);
        foreach (var format in Languages.Select(language => CultureInfo.GetCultureInfo(language).DateTimeFormat).Prepend(DateTimeFormatInfo.InvariantInfo))
        {
            foreach (var names in new[] { format.MonthNames, format.MonthGenitiveNames, format.AbbreviatedMonthNames, format.AbbreviatedMonthGenitiveNames })
            {
                for (var month = 1; month <= 12; month++)
                {
                    var key = NameKey.Of(names[month - 1]);
                    if (key.Length < 3 || key.Any(char.IsDigit)) continue;
                    if (months.TryGetValue(key, out var other) && other != month) months[key] = null;
                    else months[key] = month;
                }
            }
        }

        months["SEPT"] = 9;
        return months;
    }
}
