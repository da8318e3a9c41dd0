using System.Diagnostics;
using System.Globalization;
using System.Text;
using SquadAnalytics.Import;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Times the import of one long file.</summary>
internal sealed class ImportSpeedJob : Job
{
    public override string Name => "import-speed";

    public override string Summary => "Imports one long file (athlete, date, set, seconds) and says how long it took and how much memory.";

    public override string Usage => "import-speed [--rows 5000000]";

    public override int Run(IReadOnlyList<string> arguments)
    {
        var rows = int.Parse(Option(arguments, "--rows") ?? "5000000", CultureInfo.InvariantCulture);
        var path = Path.Combine(Path.GetTempPath(), $"import-speed-{Environment.ProcessId}.csv");
        try
        {
            Write(path, rows);
            var start = Stopwatch.GetTimestamp();
            var result = ClipboardImport.Read(ImportSource.FromFile(path));
            var seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            var peak = Process.GetCurrentProcess().PeakWorkingSet64 / 1048576.0;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{new FileInfo(path).Length / 1e6:0} MB, {result.Report} {result.NewSessions.Count} sessions in {seconds:0.0} s, peak {peak:0} MiB"));
            return result.Report.IsClean ? 0 : 1;
        }
        finally
        {
            File.Delete(path);
        }
    }

    // 50 weekly sessions of five sets for each athlete.
    private static void Write(string path, int rows)
    {
        var random = new Random(20240101);
        using var writer = new StreamWriter(path, false, new UTF8Encoding(false), 1 << 16);
        writer.Write("athlete,date,set,seconds\n");
        for (var row = 0; row < rows; row++)
        {
            var session = row / 5;
            writer.Write(string.Create(CultureInfo.InvariantCulture, $"boxer {session / 50},{new DateOnly(2030, 1, 7).AddDays(session % 50 * 7):yyyy-MM-dd},{(row % 5) + 1},{60 + (row % 5) + (4 * random.NextDouble()):0.00}\n"));
        }
    }
}
