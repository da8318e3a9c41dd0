using System.Globalization;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Import;

/// <summary>A written date: what it means for certain, or what it would mean in each order of day, month and year.</summary>
/// <param name="DayFirst">The date if the day is written first.</param>
/// <param name="MonthFirst">The date if the month is written first.</param>
/// <param name="YearFirst">The date if the year is written first.</param>
internal readonly partial record struct DateReading(DateOnly? DayFirst, DateOnly? MonthFirst, DateOnly? YearFirst)
{
    /// <summary>What is accepted in a date cell, in words.</summary>
    public const string Accepted = "a date such as 2031-03-04 or 4 March 2031, or day, month and year as numbers with the order of dates stated";

    private const int EarliestYear = 1950;
    private const int LatestYear = 2099;

    /// <summary>The date where every reading of it is the same, or null.</summary>
    public DateOnly? Certain => Candidates.Distinct().Take(2).ToList() is [var only] ? only : null;

    /// <summary>Whether more than one date is possible.</summary>
    public bool IsAmbiguous => Candidates.Distinct().Take(2).Count() > 1;

    /// <summary>Whether a date is one of those that may be meant.</summary>
    public bool MayBe(DateOnly date) => Candidates.Contains(date);

    private IEnumerable<DateOnly> Candidates => new[] { DayFirst, MonthFirst, YearFirst }.OfType<DateOnly>();

    /// <summary>A date that is known.</summary>
    public static DateReading Known(DateOnly date) => new(date, date, date);

    /// <summary>The date in a stated order, or null where it is no date in that order.</summary>
    public DateOnly? In(DateOrder order) => order switch
    {
        DateOrder.DayMonthYear => DayFirst,
        DateOrder.MonthDayYear => MonthFirst,
        _ => YearFirst,
    };

    /// <summary>Reads a cell that should be a date and nothing else; null where it is none.</summary>
    public static DateReading? Parse(string text)
    {
        var found = Find(text.Trim(), out var rest);
        return found is not null && TimeOfDay().IsMatch(rest) ? found : null;
    }

    /// <summary>Finds a date within a line of text; null where there is none.</summary>
    /// <param name="text">The text.</param>
    /// <param name="rest">The text around the date.</param>
    public static DateReading? Find(string text, out string rest)
    {
        foreach (var pattern in new[] { Numbers(), DayNameYear(), NameDayYear() })
        {
            for (var match = pattern.Match(text); match.Success; match = match.NextMatch())
            {
                if (Read(match) is not { } reading) continue;
                rest = text.Remove(match.Index, match.Length).Trim();
                return reading;
            }
        }

        rest = text;
        return null;
    }

    private static DateReading? Read(Match match)
    {
        var first = match.Groups["a"].ValueSpan;
        var second = match.Groups["b"].ValueSpan;
        var third = match.Groups["c"].ValueSpan;
        if (match.Groups["month"].Success)
        {
            return MonthNames.Find(match.Groups["month"].Value) is { } month && Date(Year(match.Groups["year"].ValueSpan), month, Number(match.Groups["day"].ValueSpan)) is { } named
                ? Known(named)
                : null;
        }

        if (first.Length == 4) return Date(Number(first), Number(second), Number(third)) is { } iso ? Known(iso) : null;
        var dayFirst = Date(Year(third), Number(second), Number(first));
        var monthFirst = Date(Year(third), Number(first), Number(second));
        var yearFirst = third.Length == 4 ? null : Date(Year(first), Number(second), Number(third));
        return dayFirst is null && monthFirst is null && yearFirst is null ? null : new DateReading(dayFirst, monthFirst, yearFirst);
    }

    private static int Year(ReadOnlySpan<char> digits) => digits.Length == 4 ? Number(digits) : 2000 + Number(digits);

    private static int Number(ReadOnlySpan<char> digits) => int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    private static DateOnly? Date(int year, int month, int day) =>
        year is >= EarliestYear and <= LatestYear && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month) ? new DateOnly(year, month, day) : null;

    [GeneratedRegex(@"(?<![\d.,:/-])(?<a>[0-9]{4})(?<s>[-/.]?)(?<b>[0-9]{2})\k<s>(?<c>[0-9]{2})(?![\d])|(?<![\d.,:/-])(?<a>[0-9]{4})(?<s>[-/.])(?<b>[0-9]{1,2})\k<s>(?<c>[0-9]{1,2})(?![\d])|(?<![\d.,:/-])(?<a>[0-9]{1,2})(?<s>[-/.]|\. )(?<b>[0-9]{1,2})\k<s>(?<c>[0-9]{4}|[0-9]{2})(?![\d])", RegexOptions.CultureInvariant)]
    private static partial Regex Numbers();

    [GeneratedRegex(@"(?<!\d)(?<day>[0-9]{1,2})(st|nd|rd|th|\.)?[\s-]*(of\s+|de\s+)?(?<month>\p{L}{3,})\.?,?[\s-]*(de\s+)?(?<year>[0-9]{4}|[0-9]{2})(?!\d)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex DayNameYear();

    [GeneratedRegex(@"(?<month>\p{L}{3,})\.?\s+(?<day>[0-9]{1,2})(st|nd|rd|th)?,?\s+(?<year>[0-9]{4})(?!\d)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex NameDayYear();

    // A weekday before the date or a time of day after it belongs to the date.
    [GeneratedRegex(@"^(\p{L}{2,}\.?,?)?\s*(T?\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?Z?)?$", RegexOptions.CultureInvariant)]
    private static partial Regex TimeOfDay();
}
