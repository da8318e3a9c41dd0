using SquadAnalytics.SampleSquad;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Squads of any size for timing: every boxer tested in the same weeks, with a season of their own, sleep and sparring of the test day and the load of the day before.</summary>
internal static class LargeSquad
{
    /// <summary>Sessions of each boxer.</summary>
    public const int SessionsEach = 25;

    private static readonly DateOnly FirstDay = new(2030, 9, 5);

    /// <summary>Draws a squad with about as many sessions as asked for; after a season of 25 tests a boxer's level stays.</summary>
    public static Squad Draw(int sessions, long seed, int sessionsEach = SessionsEach)
    {
        var test = Scenarios.Quillmere.MainTest;
        var protocol = test.Protocol;
        var boxers = Enumerable.Range(1, Math.Max(1, sessions / sessionsEach)).Select(number => new Athlete("a" + number, "Boxer " + number, "B" + number)).ToList();
        var all = new List<Session>(boxers.Count * sessionsEach);
        var days = new List<DayContext>(2 * boxers.Count * sessionsEach);
        var times = new double[protocol.Sets];
        foreach (var (index, boxer) in boxers.Index())
        {
            var random = new SeededRandom(seed, index + 1);
            var level = test.SetSeconds * Math.Exp(0.05 * random.NextNormal());
            var trend = -0.001 + 0.001 * random.NextNormal();
            for (var week = 0; week < sessionsEach; week++)
            {
                var day = level * Math.Exp(trend * Math.Min(week, SessionsEach) + 0.008 * random.NextNormal());
                var date = FirstDay.AddDays(7 * week);
                days.Add(new DayContext(boxer.Id, date.AddDays(-1)) { SessionRpe = 3 + random.NextIndex(6), Minutes = 60 + random.NextIndex(40) });
                days.Add(new DayContext(boxer.Id, date) { SleepHours = 6 + random.NextIndex(30) / 10.0, SparringRoundsBefore = random.NextIndex(5) });
                for (var set = 0; set < times.Length; set++) times[set] = Math.Round(day * (1 + (0.006 * set)) * Math.Exp(0.012 * random.NextNormal()), 1);
                all.Add(Session.FromTimes($"{boxer.Id}-{week}", boxer.Id, date, protocol, [.. times]));
            }
        }

        return new Squad("Large squad (invented)", boxers, [protocol], all) { Contexts = days, Blocks = [new TrainingBlock("first", "First", FirstDay, FirstDay.AddDays(83)), new TrainingBlock("second", "Second", FirstDay.AddDays(84), FirstDay.AddDays(180))] };
    }
}
