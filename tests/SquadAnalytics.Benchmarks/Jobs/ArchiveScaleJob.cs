using System.Diagnostics;
using System.Globalization;
using SquadAnalytics.Archive;
using SquadAnalytics.Benchmarks.Simulations;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Loads the squads of a region into one archive and times questions about all of them, with the memory they need.</summary>
internal sealed class ArchiveScaleJob : Job
{
    private const int SessionsOfASquad = 5_000;

    private static readonly (string Name, string Sql)[] Questions =
    [
        ("mean time of each set, every squad", "SELECT squad, set_number, avg(work_s) AS mean_set_s FROM set_times WHERE status = 'timed' GROUP BY ALL ORDER BY ALL"),
        ("best and median total of each athlete", "SELECT squad, athlete_id, min(total_s) AS best_s, median(total_s) AS median_s, count(*) AS tests FROM session_measures WHERE is_complete AND NOT is_void GROUP BY ALL ORDER BY ALL LIMIT 1000"),
        ("change from test to test, median and spread of each squad", "SELECT squad, median(change_s) AS median_s, stddev(change_s) / sqrt(2) AS spread_s FROM (SELECT squad, total_s - lag(total_s) OVER (PARTITION BY squad, athlete_id ORDER BY test_date) AS change_s FROM session_measures WHERE is_complete) GROUP BY squad ORDER BY squad"),
        ("decrement against the best set, line of each squad", "SELECT squad, regr_slope(decrement_percent, best_set_s) AS slope_percent_per_s, corr(decrement_percent, best_set_s) AS correlation FROM session_measures GROUP BY squad ORDER BY squad"),
    ];

    public override string Name => "archive-scale";

    public override string Summary => "Loads many squads into one archive and times questions about all of them, with memory.";

    public override string Usage => """
        archive-scale [--rows N] [--memory GIB] [--out FILE]
          --rows    set rows at most, a power of ten from 100000 on (default 10000000)
          --memory  memory of the database, in GiB (default 2)
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var most = long.Parse(Option(arguments, "--rows") ?? "10000000", CultureInfo.InvariantCulture);
        var memory = double.Parse(Option(arguments, "--memory") ?? "2", CultureInfo.InvariantCulture);
        var lines = new List<string> { $"| set rows | squads | sessions | load, s | load, processor s | database, MB | bytes per set row | {string.Join(" | ", Questions.Select(question => question.Name + ", s"))} |", $"| ---: | ---: | ---: | ---: | ---: | ---: | ---: | {string.Join(" | ", Questions.Select(_ => "---:"))} |" };
        for (var rows = Math.Min(100_000, most); rows <= most; rows *= 10) lines.Add(Measure(rows, memory));
        var text = $"# Many squads in one archive\n\nCommand `archive-scale {string.Join(' ', arguments.Take(2))}`, seed 1, commit {Provenance.Commit()}, {Provenance.Machine()}. Two threads. Tables `set_times` and `session_measures` of squads of {SessionsOfASquad} sessions each; the load includes computing the measures. Questions: median of 3, one warm-up.\n\n{string.Join('\n', lines)}\n";
        Console.Write(text);
        if (Option(arguments, "--out") is { } file) File.WriteAllText(file, text);
        return 0;
    }

    private static string Measure(long rows, double memory)
    {
        var setsEach = LargeSquad.Draw(1, seed: 1).Protocols[0].Sets;
        var sessions = (int)(rows / setsEach);
        var squads = Math.Max(1, sessions / SessionsOfASquad);
        using var archive = new SquadArchive(new ArchiveLimits { MemoryBytes = (long)(memory * (1L << 30)), Threads = 2 });
        archive.Query("SELECT 1 AS ready");
        var loading = new Load();
        archive.Load(Drawn(squads, sessions / squads, loading), "set_times", "session_measures");
        loading.Stop();
        var counted = archive.Query("SELECT count(*) AS n FROM set_times")["n"].Integers[0]!.Value;
        var size = archive.DatabaseBytes;
        Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{counted} set rows loaded in {loading.Seconds:0.0} s, {size / 1e6:0} MB"));
        var seconds = Questions.Select(question => Stopwatching.MedianSeconds(() => archive.Query(question.Sql), runs: 3, warmUps: 1)).ToList();
        return string.Create(CultureInfo.InvariantCulture, $"| {counted:#,0} | {squads:#,0} | {sessions:#,0} | {loading.Seconds:0.0} | {loading.ProcessorSeconds:0.0} | {size / 1e6:#,0} | {(double)size / counted:0} | {string.Join(" | ", seconds.Select(time => time.ToString("0.000", CultureInfo.InvariantCulture)))} |");
    }

    /// <summary>Squads, one after another; the clock stands still while one is drawn.</summary>
    private static IEnumerable<Squad> Drawn(int squads, int sessions, Load loading)
    {
        for (var number = 1; number <= squads; number++)
        {
            loading.Stop();
            var squad = Named(LargeSquad.Draw(sessions, seed: number), number);
            loading.Start();
            yield return squad;
        }
    }

    /// <summary>The squad under a name of its own, with ids as long as those that imports make.</summary>
    private static Squad Named(Squad squad, int number) => new(
        string.Create(CultureInfo.InvariantCulture, $"Squad {number} (invented)"), squad.Athletes, squad.Protocols,
        [.. squad.Sessions.Select(session => session with { Id = Session.IdFor(session.AthleteId, session.Date, session.Protocol.Id) })]);

    /// <summary>Time and processor time of loading, without that of drawing the squads.</summary>
    private sealed class Load
    {
        private readonly Stopwatch _clock = Stopwatch.StartNew();
        private TimeSpan _since = Environment.CpuUsage.TotalTime;
        private TimeSpan _processor;

        public double Seconds => _clock.Elapsed.TotalSeconds;

        public double ProcessorSeconds => _processor.TotalSeconds;

        public void Start()
        {
            _since = Environment.CpuUsage.TotalTime;
            _clock.Start();
        }

        public void Stop()
        {
            _clock.Stop();
            _processor += Environment.CpuUsage.TotalTime - _since;
        }
    }
}
