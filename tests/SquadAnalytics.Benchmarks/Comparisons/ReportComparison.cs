using System.Diagnostics;
using System.Globalization;

namespace SquadAnalytics.Benchmarks.Comparisons;

/// <summary>
/// From the command to the finished report, each run a new process: our published build and an R Markdown document of a table, a mixed
/// model and four figures. The peak memory is that of the largest process of each run.
/// </summary>
internal abstract class ReportComparison(string notebook) : PeerComparison
{
    private const int Runs = 5;

    public override string Summary => $"from the command to a finished report: our published build runs {notebook}, R Markdown renders a document of a table, a mixed model and four figures; medians of {Runs} runs, cold";

    public override double PeerSeconds(string dataFolder) => Median("R Markdown", "bash", [Path.Combine(AppContext.BaseDirectory, "Peers", "peer_report.sh")]);

    public override double OurSeconds(string dataFolder)
    {
        var program = PublishedWorkbench.In(Path.Combine(dataFolder, "published"));
        var kept = Directory.CreateTempSubdirectory("kept-runs-").FullName;
        try
        {
            var run = 0;
            return Median(notebook, program, () => ["run", notebook, "--out", Path.Combine(kept, (++run).ToString(CultureInfo.InvariantCulture))]);
        }
        finally
        {
            Directory.Delete(kept, recursive: true);
        }
    }

    private static double Median(string what, string program, IReadOnlyList<string> arguments) => Median(what, program, () => arguments);

    /// <summary>GNU time (Debian: time) tells the seconds and the memory of the largest process.</summary>
    private static double Median(string what, string program, Func<IReadOnlyList<string>> arguments)
    {
        var seconds = new List<double>();
        var peak = 0.0;
        for (var run = 0; run < Runs; run++)
        {
            var start = new ProcessStartInfo("/usr/bin/time", ["-q", "-f", "%e %M", program, .. arguments()]) { RedirectStandardError = true, RedirectStandardOutput = true };
            using var process = Process.Start(start) ?? throw new InvalidOperationException("GNU time did not start.");
            _ = process.StandardOutput.ReadToEndAsync();
            var told = process.StandardError.ReadToEnd();
            process.WaitForExit();
            if (process.ExitCode != 0) throw new InvalidOperationException($"{what} ended with code {process.ExitCode}: {told}");
            var last = told.TrimEnd().Split('\n')[^1].Split(' ');
            seconds.Add(double.Parse(last[0], CultureInfo.InvariantCulture));
            peak = Math.Max(peak, double.Parse(last[1], CultureInfo.InvariantCulture) / 1024);
        }

        seconds.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {string.Join(" ", seconds)} s, peak {peak:0} MB"));
        return seconds[Runs / 2];
    }
}
