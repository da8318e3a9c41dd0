using System.Diagnostics;
using System.Globalization;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Reports;
using SquadAnalytics.Notebooks.Running;

namespace SquadAnalytics.Benchmarks.Comparisons;

/// <summary>
/// The student's report where everything is awake, as behind an open form in the browser: the spare process has practised; R renders its
/// document again in the same session. Cells are run by the published workbench; what asks for them, gathers what they put out and writes
/// the report is this program, which is as quick as users' only where it was published, too.
/// </summary>
internal sealed class SeasonReportWarmComparison : PeerComparison
{
    private const int Runs = 5;
    private const string Notebook = "04-season-review";
    private static readonly TimeSpan Practice = TimeSpan.FromSeconds(8);

    public override string Name => "season-report-warm";

    public override string Summary => $"from the wish to the finished report with all awake: our published build runs {Notebook} in a process that practised it, R Markdown renders its document again in the same session; medians of {Runs} runs";

    public override double PeerSeconds(string dataFolder)
    {
        var script = $$"""
            out <- tempdir()
            for (i in 0:{{Runs}}) cat(system.time(rmarkdown::render("report.Rmd", output_dir = out, intermediates_dir = out, quiet = TRUE))[["elapsed"]], "\n")
            """;
        var start = new ProcessStartInfo("Rscript", ["-e", script]) { RedirectStandardOutput = true, WorkingDirectory = Path.Combine(AppContext.BaseDirectory, "Peers") };
        using var process = Process.Start(start) ?? throw new InvalidOperationException("R did not start.");
        var told = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0) throw new InvalidOperationException($"R ended with code {process.ExitCode}.");
        return Median("R Markdown, same session", told.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1).Select(line => double.Parse(line, CultureInfo.InvariantCulture)));
    }

    public override double OurSeconds(string dataFolder)
    {
        var program = PublishedWorkbench.In(Path.Combine(dataFolder, "published"));
        var kept = Directory.CreateTempSubdirectory("kept-runs-").FullName;
        try
        {
            return Median(Notebook, SecondsAsync(Path.GetDirectoryName(program)!, kept).GetAwaiter().GetResult().Skip(1));
        }
        finally
        {
            Directory.Delete(kept, recursive: true);
        }
    }

    private static async Task<IReadOnlyList<double>> SecondsAsync(string published, string kept)
    {
        await using var kernels = new KernelSource(KernelCommand.ForAssembly(Path.Combine(published, "SquadAnalytics.Workbench.dll")), new KernelLimits());
        var runner = new NotebookRunner(kernels, TimeProvider.System);
        var notebooks = Path.Combine(published, "notebooks");
        var request = new RunRequest(Notebook, NotebookFile.Read(Path.Combine(notebooks, Notebook + ".ipynb")), notebooks) { LogbookFolder = Path.Combine(published, "sample-data", "squad") };
        var seconds = new List<double>();
        for (var run = 0; run <= Runs; run++)
        {
            runner.Practise(request);
            await Task.Delay(Practice);
            var clock = Stopwatch.StartNew();
            var done = await runner.RunAsync(request);
            KeptRun.Write(done, Path.Combine(kept, run.ToString(CultureInfo.InvariantCulture)));
            seconds.Add(clock.Elapsed.TotalSeconds);
            if (done.Problem is { } problem) throw new InvalidOperationException($"{Notebook}: {problem}");
        }

        return seconds;
    }

    private static double Median(string what, IEnumerable<double> seconds)
    {
        var sorted = seconds.Order().ToList();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {string.Join(" ", sorted.Select(second => second.ToString("0.00", CultureInfo.InvariantCulture)))} s"));
        return sorted[sorted.Count / 2];
    }
}
