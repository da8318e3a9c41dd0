using SquadAnalytics.Sets;

namespace SquadAnalytics.Reliability;

/// <summary>One athlete's value in one test of the squad.</summary>
internal readonly record struct TestValue(string Athlete, int Test, double Value);

/// <summary>Numbers the tests of a squad and cuts them into reliability windows.</summary>
internal static class TestSeries
{
    /// <summary>The tests of the squad in order, each with the sessions that belong to it.</summary>
    public static IReadOnlyList<IReadOnlyList<Session>> Tests(IReadOnlyList<Session> sessions, TestGrouping grouping)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        int Key(Session session) => grouping switch
        {
            TestGrouping.Week => WeekOf(session.Date),
            TestGrouping.Date => session.Date.DayNumber,
            _ => seen[session.AthleteId] = seen.GetValueOrDefault(session.AthleteId) + 1,
        };
        return [.. sessions.Select(session => (Key: Key(session), Session: session)).GroupBy(pair => pair.Key).OrderBy(test => test.Key)
            .Select(test => (IReadOnlyList<Session>)[.. test.Select(pair => pair.Session)])];
    }

    /// <summary>The number of the week, Monday to Sunday, that a date lies in. Day number 0 was a Monday.</summary>
    public static int WeekOf(DateOnly date) => date.DayNumber / 7;

    /// <summary>Monday of the week that a date lies in.</summary>
    public static DateOnly MondayOf(DateOnly date) => DateOnly.FromDayNumber(7 * WeekOf(date));

    /// <summary>Windows of at most so many consecutive tests of one block; null keeps each block whole, and all tests together where there is no block.</summary>
    public static IReadOnlyList<IReadOnlyList<TestValue>> Windows(IReadOnlyList<Session> sessions, IReadOnlyList<TrainingBlock> blocks, TestGrouping grouping, int? length, Func<Session, double> value)
    {
        var windows = new List<IReadOnlyList<TestValue>>();
        foreach (var stretch in sessions.GroupBy(session => Stretch(session, length is null ? [] : blocks), StringComparer.Ordinal))
        {
            var tests = Tests([.. stretch], grouping);
            // Windows of nearly equal length: the same degrees of freedom as full windows and a rest, and no window of one test.
            var count = length is { } most ? (tests.Count + most - 1) / most : 1;
            for (var window = 0; window < count; window++)
            {
                int from = window * tests.Count / count, to = (window + 1) * tests.Count / count;
                windows.Add([.. Enumerable.Range(from, to - from).SelectMany(test => tests[test].Select(session => new TestValue(session.AthleteId, test, value(session))))]);
            }
        }

        return windows;
    }

    /// <summary>The value of a measure on a scale.</summary>
    public static Func<Session, double> Value(SessionMeasure measure, Scale scale) => scale == Scale.Log
        ? session => Math.Log(SessionMeasures.Of(session, measure))
        : session => SessionMeasures.Of(session, measure);

    /// <summary>Values by athlete in the tests given; only athletes who took every one of them, in the order of their ids.</summary>
    public static IReadOnlyList<double[]> CompleteTable(IReadOnlyList<IReadOnlyList<Session>> tests, Func<Session, double> value)
    {
        var columns = tests.Select(test => test.GroupBy(session => session.AthleteId, StringComparer.Ordinal).ToDictionary(own => own.Key, own => value(own.Last()), StringComparer.Ordinal)).ToList();
        return [.. columns[0].Keys.Order(StringComparer.Ordinal).Where(athlete => columns.TrueForAll(column => column.ContainsKey(athlete))).Select(athlete => columns.Select(column => column[athlete]).ToArray())];
    }

    /// <summary>The block a session belongs to, or the stretch between blocks that it lies in.</summary>
    private static string Stretch(Session session, IReadOnlyList<TrainingBlock> blocks) =>
        blocks.FirstOrDefault(block => block.Covers(session.Date) && block.Includes(session.AthleteId))?.Id
        ?? $"\u0000after {blocks.Count(block => block.To < session.Date)}";
}
