using SquadAnalytics.Statistics;

namespace SquadAnalytics.Load;

/// <summary>Weekly training load: sum, monotony and strain.</summary>
public static class WeeklyLoad
{
    private const int Days = 7;

    /// <summary>The load of seven days of one athlete.</summary>
    /// <remarks>
    /// Sum of the session loads (rating of perceived exertion times minutes, see <see cref="SessionLoad"/>); monotony = mean daily load / SD of the seven daily loads; strain = sum × monotony; all in
    /// arbitrary units, monotony without unit. Every day must be known: written down, or confirmed as one of rest. Monotony explodes as days equalise, and its link with illness rests on small
    /// samples: no limit is drawn and no risk is named. Source: Foster 1998, Med Sci Sports Exerc 30:1164-1168.
    /// Assumes that all training of the week is written down.
    /// </remarks>
    /// <param name="days">Days of one athlete, in any order; others than the seven are passed over.</param>
    /// <param name="from">First of the seven days.</param>
    /// <param name="deviation">How the SD is taken; days - 1 by default.</param>
    /// <returns>The load, or <see cref="Refusal.TooFewDays"/> where fewer than seven days are known; monotony and strain refuse with <see cref="Refusal.ZeroVariance"/> where all days are alike.</returns>
    /// <exception cref="ArgumentException">The days belong to several athletes, or a date appears twice.</exception>
    public static Answer<WeeklyLoadResult> Summarize(IReadOnlyList<DayContext> days, DateOnly from, LoadDeviation deviation = LoadDeviation.Sample) => Of(ByDate(days), from, deviation);

    /// <summary>All weeks from Monday to Sunday that touch the days of one athlete, in order; weeks without a written day are there and refuse.</summary>
    /// <inheritdoc cref="Summarize" path="/remarks"/>
    /// <param name="days">Days of one athlete, in any order; possibly none.</param>
    /// <param name="deviation">How the SD is taken; days - 1 by default.</param>
    /// <exception cref="ArgumentException">The days belong to several athletes, or a date appears twice.</exception>
    public static IReadOnlyList<WeekOfLoad> Weeks(IReadOnlyList<DayContext> days, LoadDeviation deviation = LoadDeviation.Sample)
    {
        var byDate = ByDate(days);
        if (byDate.Count == 0) return [];
        var weeks = new List<WeekOfLoad>();
        var last = byDate.Keys.Max();
        for (var monday = Reliability.TestSeries.MondayOf(byDate.Keys.Min()); monday <= last; monday = monday.AddDays(Days)) weeks.Add(new WeekOfLoad(monday, Of(byDate, monday, deviation)));
        return weeks;
    }

    private static Answer<WeeklyLoadResult> Of(Dictionary<DateOnly, DayContext> days, DateOnly from, LoadDeviation deviation)
    {
        double[] loads = [.. Enumerable.Range(0, Days).Select(day => days.GetValueOrDefault(from.AddDays(day)) is { } known ? SessionLoad.Of(known) : null).OfType<double>()];
        if (loads.Length < Days) return new NotEstimable("the week's load", Refusal.TooFewDays, Days, loads.Length, "confirmed days");
        var sum = Descriptive.Sum(loads);
        var spread = Descriptive.StandardDeviation(loads) * (deviation == LoadDeviation.Population ? Math.Sqrt((Days - 1.0) / Days) : 1);
        Answer<Estimate> monotony = spread > 0
            ? new Estimate(sum / Days / spread, Unit.None, Days, $"mean daily load / SD of the days ({(deviation == LoadDeviation.Population ? "divided by 7" : "divided by 6")})")
            : new NotEstimable("the week's monotony", Refusal.ZeroVariance, "days that differ in load", "seven days alike");
        return new WeeklyLoadResult
        {
            From = from,
            DailyLoads = loads,
            Sum = new Estimate(sum, Unit.Load, Days, "sum of seven daily loads, session RPE × minutes").WithNotes("Monotony explodes as days equalise; its link with illness rests on small samples."),
            Monotony = monotony,
            Strain = monotony.Select(ratio => new Estimate(sum * ratio.Value, Unit.Load, Days, "sum × monotony")),
        };
    }

    private static Dictionary<DateOnly, DayContext> ByDate(IReadOnlyList<DayContext> days)
    {
        ArgumentNullException.ThrowIfNull(days);
        if (days.Select(day => day.AthleteId).Distinct(StringComparer.Ordinal).Count() > 1) throw new ArgumentException("The days must be those of one athlete.", nameof(days));
        var byDate = new Dictionary<DateOnly, DayContext>();
        foreach (var day in days)
        {
            if (!byDate.TryAdd(day.Date, day)) throw new ArgumentException(FormattableString.Invariant($"The day {day.Date:yyyy-MM-dd} appears twice."), nameof(days));
        }

        return byDate;
    }
}
