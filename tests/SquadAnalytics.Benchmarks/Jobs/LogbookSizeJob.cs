using System.Globalization;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Times a big logbook: making, opening, changing.</summary>
internal sealed class LogbookSizeJob : Job
{
    public override string Name => "logbook-size";

    public override string Summary => "Times making, opening and changing a big logbook.";

    public override string Usage => "logbook-size [--athletes 200] [--sessions 300] [--sets 5] (sessions of each athlete, sets of each session)";

    public override int Run(IReadOnlyList<string> arguments)
    {
        var athletes = int.Parse(Option(arguments, "--athletes") ?? "200", CultureInfo.InvariantCulture);
        var sessions = int.Parse(Option(arguments, "--sessions") ?? "300", CultureInfo.InvariantCulture);
        var sets = int.Parse(Option(arguments, "--sets") ?? "5", CultureInfo.InvariantCulture);
        var folder = Directory.CreateTempSubdirectory("logbook-size-").FullName;
        try
        {
            var place = Path.Combine(folder, "logbook");
            var change = Content(athletes, sessions, sets);
            using (var logbook = Logbook.Create(place, "Size (invented)")) Report("commit of everything", 1, () => logbook.Commit(change));
            Report("open, first time in the process", 1, () => Logbook.Open(place).Dispose());
            Report("open, median of 3", 3, () => Logbook.Open(place).Dispose());
            using (var logbook = Logbook.Open(place))
            {
                var session = change.Sessions[^1];
                Report("commit of one more session", 1, () => logbook.Commit(new LogbookChange("one more") { Sessions = [Session.FromTimes("one-more", session.AthleteId, session.Date.AddDays(1), session.Protocol, [.. session.TimesSeconds])] }));
                Report("undo", 1, logbook.UndoLastAccept);
            }

            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{athletes} athletes, {athletes * sessions} sessions, {(long)athletes * sessions * sets} set rows, {Directory.EnumerateFiles(place).Sum(file => new FileInfo(file).Length) / 1e6:0.0} MB of tables, {Environment.WorkingSet / 1e6:0} MB resident"));
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Report(string what, int runs, Action work)
    {
        var before = Environment.CpuUsage.TotalTime;
        var seconds = Stopwatching.MedianSeconds(work, runs, warmUps: 0);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what,-34} {seconds:0.000} s ({(Environment.CpuUsage.TotalTime - before).TotalSeconds / runs:0.000} s of processor time)"));
    }

    private static LogbookChange Content(int athletes, int sessions, int sets)
    {
        var random = new Random(1);
        var protocol = new Protocol("p1", "Size circuit", [new Station("burpees", 8)], sets, new Seconds(100));
        var first = new DateOnly(2020, 1, 1);
        return new LogbookChange("everything")
        {
            Protocols = [protocol],
            Athletes = [.. Enumerable.Range(1, athletes).Select(athlete => new Athlete(Id(athlete), $"Invented {athlete}", $"I{athlete}"))],
            Sessions = [.. from athlete in Enumerable.Range(1, athletes) from session in Enumerable.Range(0, sessions) select SquadAnalytics.Session.FromTimes(string.Create(CultureInfo.InvariantCulture, $"s{athlete}-{session}"), Id(athlete), first.AddDays(session * 3), protocol, Times(random, sets))],
        };

        static string Id(int athlete) => string.Create(CultureInfo.InvariantCulture, $"a{athlete}");
        static double[] Times(Random random, int sets) => [.. Enumerable.Range(0, sets).Select(_ => Math.Round(50 + 20 * random.NextDouble(), 1))];
    }
}
