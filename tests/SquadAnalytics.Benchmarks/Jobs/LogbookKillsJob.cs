using System.Diagnostics;
using System.Globalization;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Kills a program at random moments while it accepts changes, and checks that the logbook is before or after a change, never between.</summary>
internal sealed class LogbookKillsJob : Job
{
    public override string Name => "logbook-kills";

    public override string Summary => "Kills (SIGKILL) a program that accepts changes, at random moments; the logbook must be before or after, never between.";

    public override string Usage => """
        logbook-kills [--kills 200] [--seed 1] [--folder FOLDER] [--out FILE]
          --folder  a folder on the disk to be tried (default: the temporary folder)
          --out     a file for the table with seed, commit and machine
        Prints how often opening finished, took back or found nothing. Exit code 1 when a logbook was between two states.
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        if (Option(arguments, "--child") is { } folder) return Accept(folder);
        var kills = int.Parse(Option(arguments, "--kills") ?? "200", CultureInfo.InvariantCulture);
        var seed = int.Parse(Option(arguments, "--seed") ?? "1", CultureInfo.InvariantCulture);
        var tally = Kill(kills, seed, Option(arguments, "--folder") ?? Path.GetTempPath());
        Console.WriteLine(tally);
        if (Option(arguments, "--out") is { } file) File.WriteAllText(file, tally.Table($"logbook-kills --kills {kills} --out {file}"));
        return tally.Between == 0 ? 0 : 1;
    }

    /// <summary>Runs the kills and counts what was found afterwards.</summary>
    internal static LogbookKills Kill(int kills, int seed, string place)
    {
        var random = new Random(seed);
        var start = Stopwatch.GetTimestamp();
        var tally = new LogbookKills(kills, seed);
        var folder = Path.Combine(place, $"logbook-kills-{Guid.NewGuid():N}");
        try
        {
            using (var logbook = Logbook.Create(folder, KilledChange.Name(0))) logbook.Commit(KilledChange.First(earlier: 2000));
            for (var kill = 0; kill < kills; kill++)
            {
                var acknowledged = KillOnce(folder, 2 * random.NextDouble());
                tally = tally.With(KilledChange.Check(folder, acknowledged));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return tally with { Seconds = Stopwatch.GetElapsedTime(start).TotalSeconds };
    }

    /// <summary>Starts the program, lets it accept two changes, kills it a moment later; returns the number of the last change that it said was accepted.</summary>
    /// <param name="folder">The logbook.</param>
    /// <param name="moment">The moment, as a multiple of the time that a change takes.</param>
    private static int KillOnce(string folder, double moment)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet") { RedirectStandardOutput = true };
        foreach (var argument in new[] { "exec", typeof(LogbookKillsJob).Assembly.Location, "logbook-kills", "--child", folder }) start.ArgumentList.Add(argument);
        using var child = Process.Start(start)!;
        var first = child.StandardOutput.ReadLine() ?? throw new InvalidOperationException("The child ended before it accepted anything.");
        var begun = Stopwatch.GetTimestamp();
        var acknowledged = int.Parse(child.StandardOutput.ReadLine() ?? first, CultureInfo.InvariantCulture);
        Thread.Sleep(moment * Stopwatch.GetElapsedTime(begun));
        child.Kill();
        child.WaitForExit();
        while (child.StandardOutput.ReadLine() is { } line) acknowledged = int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : acknowledged;
        return acknowledged;
    }

    /// <summary>The child: accepts one change after another and says so, until it is killed.</summary>
    private static int Accept(string folder)
    {
        using var logbook = Logbook.Open(folder);
        for (var number = KilledChange.NumberOf(logbook) + 1; ; number++)
        {
            logbook.Commit(KilledChange.Next(logbook.Squad, number));
            Console.WriteLine(number.ToString(CultureInfo.InvariantCulture));
        }
    }
}
