using System.Globalization;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Load;

/// <summary>What came before a test: sleep, sparring, the load of the week, body mass, bouts and weigh-ins, beside the athlete's usual.</summary>
public static class TestContext
{
    /// <summary>Days before the test whose load is summed; the test day is not among them.</summary>
    public const int LoadDays = 7;

    private const int BoutDays = 3;
    private const int WeighInDays = 7;

    /// <summary>Puts the circumstances of one test beside the athlete's usual ones.</summary>
    /// <remarks>
    /// <para>Usual is the median over the athlete's other tests of the same protocol that are not void. Load is the sum of session loads (rating of perceived exertion
    /// times minutes) over the seven days before the test; it is known only where all seven days are, rest days confirmed.</para>
    /// <para>Descriptive: assumes nothing, no interval and no test; each number has its own unit. What was rated during or after the test is left out, because it is an outcome of it.
    /// Source: common practice, no source; load after Foster et al. (2001), J Strength Cond Res 15:109-115.</para>
    /// </remarks>
    /// <param name="squad">The squad.</param>
    /// <param name="session">The test.</param>
    /// <exception cref="ArgumentException">The session is not one of the squad.</exception>
    public static TestContextResult Summarize(Squad squad, Session session)
    {
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(session);
        var own = squad.SessionsOf(session.AthleteId);
        if (!own.Any(known => known.Id == session.Id)) throw new ArgumentException($"Session '{session.Id}' is not in squad '{squad.Name}'.", nameof(session));

        var days = squad.Contexts.Where(day => day.AthleteId == session.AthleteId).ToDictionary(day => day.Date);
        var others = own.Where(other => other.Id != session.Id && !other.IsVoid && other.Protocol.Key == session.Protocol.Key).Select(other => other.Date).Distinct().ToList();
        DayContext? Day(DateOnly date) => days.GetValueOrDefault(date);
        ContextMeasure Measure(string name, string unit, Func<DateOnly, double?> of)
        {
            var known = others.Select(of).OfType<double>().ToArray();
            return new ContextMeasure(name, unit, of(session.Date), known.Length == 0 ? null : Descriptive.Median(known), known.Length);
        }

        ContextMeasure[] measures =
        [
            Measure("sleep the night before", "h", date => Day(date)?.SleepHours),
            Measure("sparring before the test", "rounds", date => Day(date)?.SparringRoundsBefore),
            Measure("load of the seven days before", "AU", date => LoadBefore(days, date)),
            Measure("body mass", "kg", date => Day(date)?.BodyMassKilograms),
        ];
        return new TestContextResult
        {
            Session = session,
            Measures = measures,
            Events = [.. squad.Events.Where(item => item.AthleteId == session.AthleteId && IsNear(item, session.Date)).OrderBy(item => item.Date)],
            Notes = [.. Notes(measures, session)],
        };
    }

    /// <summary>Sum of the loads of a run of days before a test, or null where one of them is not known.</summary>
    internal static double? LoadBefore(Dictionary<DateOnly, DayContext> days, DateOnly test, int nearest = 1, int farthest = LoadDays)
    {
        double sum = 0;
        for (var back = nearest; back <= farthest; back++)
        {
            if (!days.TryGetValue(test.AddDays(-back), out var day) || SessionLoad.Of(day) is not { } load) return null;
            sum += load;
        }

        return sum;
    }

    private static bool IsNear(AthleteEvent item, DateOnly test)
    {
        var before = test.DayNumber - item.Date.DayNumber;
        return item.Kind switch
        {
            EventKind.Bout => before is >= 0 and <= BoutDays,
            EventKind.WeighIn => Math.Abs(before) <= WeighInDays,
            _ => before >= 0 && item.BarsTestingOn(test),
        };
    }

    private static IEnumerable<string> Notes(IReadOnlyList<ContextMeasure> measures, Session session)
    {
        if (session.TemperatureCelsius is { } celsius) yield return string.Create(CultureInfo.InvariantCulture, $"Temperature at the test: {celsius:0.#} °C.");
        foreach (var measure in measures.Where(measure => measure.OnTheDay is null)) yield return $"Not recorded for this test: {measure.Name}.";
        yield return "Circumstances of a test do not show what caused its times.";
    }
}
