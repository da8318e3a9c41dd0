using System.Globalization;
using ScottPlot;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Days as numbers on an axis, with ticks at the first of the months or, over short spans, on Mondays.</summary>
internal static class DateScale
{
    private const int ShortSpanDays = 75;

    public static double Position(DateOnly date) => date.DayNumber;

    public static Coordinates At(DatedValue value) => new(Position(value.Date), value.Value);

    /// <summary>Ticks between two days, about as many as fit.</summary>
    public static IReadOnlyList<double> Between(DateOnly first, DateOnly last, int most)
    {
        var days = last.DayNumber - first.DayNumber;
        var all = days <= ShortSpanDays ? Mondays(first, last) : Firsts(first, last);
        var every = Math.Max(1, (all.Count + most - 1) / most);
        return [.. all.Where((_, k) => k % every == 0)];
    }

    /// <summary>The text of a tick: month, with the year in January and on the first tick, or day and month over short spans.</summary>
    public static Func<double, string> Text(IReadOnlyList<double> ticks)
    {
        var monthly = ticks.All(tick => Day(tick).Day == 1);
        return tick => Day(tick).ToString(!monthly ? "d MMM" : tick == ticks[0] || Day(tick).Month == 1 ? "MMM yyyy" : "MMM", CultureInfo.InvariantCulture);
    }

    /// <summary>Runs of tests without a gap longer than a number of days: what may be joined by a line.</summary>
    public static IReadOnlyList<Coordinates[]> Runs(IReadOnlyList<DatedValue> values, int longestGapDays)
    {
        var runs = new List<List<Coordinates>>();
        for (var k = 0; k < values.Count; k++)
        {
            if (k == 0 || values[k].Date.DayNumber - values[k - 1].Date.DayNumber > longestGapDays) runs.Add([]);
            runs[^1].Add(At(values[k]));
        }

        return [.. runs.Select(run => run.ToArray())];
    }

    private static DateOnly Day(double tick) => DateOnly.FromDayNumber((int)tick);

    private static List<double> Mondays(DateOnly first, DateOnly last) =>
        [.. Days(first, last).Where(day => day.DayOfWeek == DayOfWeek.Monday).Select(Position)];

    private static List<double> Firsts(DateOnly first, DateOnly last) =>
        [.. Days(first, last).Where(day => day.Day == 1).Select(Position)];

    private static IEnumerable<DateOnly> Days(DateOnly first, DateOnly last) =>
        Enumerable.Range(first.DayNumber, last.DayNumber - first.DayNumber + 1).Select(DateOnly.FromDayNumber);
}
