using SquadAnalytics.Statistics;

namespace SquadAnalytics.Load;

/// <summary>What was the same for everybody on one test day: temperature, timer, place, beside the days before.</summary>
public sealed record TestDay
{
    private TestDay(DateOnly date, IReadOnlyList<ContextMeasure> measures, IReadOnlyList<string> changes, int athletes) => (Date, Measures, Changes, Athletes) = (date, measures, changes, athletes);

    /// <summary>The day.</summary>
    public DateOnly Date { get; }

    /// <summary>Circumstances with a number, each beside the usual of the test days before.</summary>
    public IReadOnlyList<ContextMeasure> Measures { get; }

    /// <summary>What was another than on the test day before, each as a phrase: <c>timer: gate instead of watch</c>.</summary>
    public IReadOnlyList<string> Changes { get; }

    /// <summary>Athletes with a session on the day.</summary>
    public int Athletes { get; }

    /// <summary>Describes a test day.</summary>
    /// <remarks>
    /// Temperature is the median over the day's sessions; sleep and sparring are means over the athletes with an entry. Usual: the median over the earlier test days of the same protocol
    /// key. Descriptive: a squad that moves as one may have met another day rather than become another squad. Source: common practice, no source.
    /// </remarks>
    /// <param name="squad">The squad.</param>
    /// <param name="protocol">The protocol.</param>
    /// <param name="date">The test day.</param>
    public static TestDay Summarize(Squad squad, Protocol protocol, DateOnly date)
    {
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(protocol);
        var days = squad.Sessions.Where(session => !session.IsVoid && session.Protocol.Key == protocol.Key && session.Date <= date)
            .GroupBy(session => session.Date).OrderBy(sessions => sessions.Key).Select(sessions => new Day(sessions.Key, [.. sessions])).ToList();
        var contexts = squad.Contexts.ToLookup(context => context.Date);
        var here = days.LastOrDefault() is { } latest && latest.Date == date ? latest : new Day(date, []);
        var before = days.Where(day => day.Date < date).ToList();
        ContextMeasure Measure(string name, string unit, Func<Day, double?> of)
        {
            var known = before.Select(of).OfType<double>().ToArray();
            return new ContextMeasure(name, unit, of(here), known.Length == 0 ? null : Descriptive.Median(known), known.Length);
        }

        return new TestDay(
            date,
            [
                Measure("temperature", "°C", day => Middle(day.Sessions.Select(session => session.TemperatureCelsius))),
                Measure("sleep the night before, mean", "h", day => Mean(day.Of(contexts).Select(context => context.SleepHours))),
                Measure("sparring before the test, mean", "rounds", day => Mean(day.Of(contexts).Select(context => (double?)context.SparringRoundsBefore))),
            ],
            before.Count == 0 || here.Sessions.Count == 0 ? [] :
            [
                .. Change("timer", here, before[^1], session => session.Timer),
                .. Change("place", here, before[^1], session => session.Place),
                .. Change("timing resolution", here, before[^1], session => session.TimingResolution?.ToString()),
            ],
            here.Sessions.Select(session => session.AthleteId).Distinct(StringComparer.Ordinal).Count());
    }

    /// <summary>The day's numbers in one line.</summary>
    public override string ToString() => FormattableString.Invariant($"{Date:yyyy-MM-dd}: {Athletes} athletes; {string.Join("; ", Measures.Select(measure => $"{measure.Name} {measure.OnTheDay?.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture) ?? "not recorded"} {measure.Unit}"))}");

    private static IEnumerable<string> Change(string what, Day here, Day before, Func<Session, string?> of)
    {
        string Of(Day day) => string.Join(" and ", day.Sessions.Select(of).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
        var (now, then) = (Of(here), Of(before));
        if (now.Length > 0 && then.Length > 0 && now != then) yield return $"{what}: {now} instead of {then}";
    }

    private static double? Middle(IEnumerable<double?> numbers) => numbers.OfType<double>().ToArray() is { Length: > 0 } known ? Descriptive.Median(known) : null;

    private static double? Mean(IEnumerable<double?> numbers) => numbers.OfType<double>().ToArray() is { Length: > 0 } known ? Descriptive.Mean(known) : null;

    private sealed record Day(DateOnly Date, IReadOnlyList<Session> Sessions)
    {
        public IEnumerable<DayContext> Of(ILookup<DateOnly, DayContext> contexts)
        {
            var present = Sessions.Select(session => session.AthleteId).ToHashSet(StringComparer.Ordinal);
            return contexts[Date].Where(context => present.Contains(context.AthleteId));
        }
    }
}
