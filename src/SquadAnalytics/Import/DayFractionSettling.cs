namespace SquadAnalytics.Import;

/// <summary>Settles times that a spreadsheet stored as a fraction of a day: 1:02 typed there means one hour and two minutes to it.</summary>
internal static class DayFractionSettling
{
    private const string MinutesSeconds = "minutes:seconds";
    private const string HoursMinutesSeconds = "hours:minutes:seconds";

    // Whole minutes, and at least this many of them: typed as minutes and seconds, taken as hours and minutes.
    private const double LongSeconds = 600;

    public static void Apply(RawImport raw, Decisions decisions)
    {
        var doubtful = raw.Rows.Where(row => !row.IsRefused).SelectMany(row => Doubtful(raw, row)).ToList();
        foreach (var cells in doubtful.GroupBy(cell => (cell.Row.Block.Place, IsLong: IsLong(raw.Entries[cell.Entry].Seconds))))
        {
            var example = raw.Entries[cells.First().Entry].Seconds;
            var answer = decisions.Ask(
                $"day-fraction:{cells.Key.Place}:{(cells.Key.IsLong ? "hours" : "seconds")}",
                DecisionKind.DayFraction,
                FormattableString.Invariant($"{cells.Key.Place}: the spreadsheet stored times of day, first in line {cells.First().Row.Line}. Is {Shown(example)} to be read as {example / 60:0.###} s (minutes:seconds were typed) or as {example:0.###} s (as stored)?"),
                [MinutesSeconds, HoursMinutesSeconds],
                cells.Select(cell => cell.Row).Distinct());
            if (answer is not null) Settle(raw, cells, answer == MinutesSeconds ? 60 : 1);
        }
    }

    private static void Settle(RawImport raw, IEnumerable<DoubtfulCell> cells, double divisor)
    {
        foreach (var (row, entry) in cells)
        {
            var seconds = Math.Round(raw.Entries[entry].Seconds / divisor, 3);
            raw.Entries[entry] = raw.Entries[entry] with { Seconds = seconds, Decimals = Decimals(seconds), Doubt = EntryDoubt.None };
            if (seconds <= 0) row.Refuse(new RowFault(row.Block.Header.Columns[raw.Entries[entry].Column], "a time must be above 0", TimeEntry.Accepted));
        }
    }

    private static IEnumerable<DoubtfulCell> Doubtful(RawImport raw, ParsedRow row)
    {
        for (var k = row.FirstEntry; k < row.FirstEntry + row.EntryCount; k++)
        {
            if (raw.Entries[k].Doubt == EntryDoubt.DayFraction) yield return new DoubtfulCell(row, k);
        }
    }

    private static bool IsLong(double seconds) => seconds >= LongSeconds && Math.Abs(Math.IEEERemainder(seconds, 60)) < 0.5;

    private static byte Decimals(double seconds)
    {
        byte decimals = 0;
        for (var scaled = seconds; decimals < 3 && Math.Abs(scaled - Math.Round(scaled)) > 1e-6; scaled *= 10) decimals++;
        return decimals;
    }

    private static string Shown(double seconds)
    {
        var whole = TimeSpan.FromSeconds(Math.Min(seconds, 1e8));
        return FormattableString.Invariant($"{(int)whole.TotalHours}:{whole.Minutes:00}:{whole.Seconds:00}{(whole.Milliseconds == 0 ? "" : FormattableString.Invariant($".{whole.Milliseconds:000}"))}");
    }

    private readonly record struct DoubtfulCell(ParsedRow Row, int Entry);
}
