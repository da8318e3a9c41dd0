using System.Globalization;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using SquadAnalytics.Benchmarks.Simulations;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Times the numerical kernels with BenchmarkDotNet.</summary>
internal sealed class KernelsJob : Job
{
    private const double NanosecondsPerMillisecond = 1e6;

    public override string Name => "kernels";

    public override string Summary => "Times the numerical kernels (BenchmarkDotNet; build with -c Release).";

    public override string Usage => """
        kernels [--out FILE] [BenchmarkDotNet arguments, for example --filter '*Mixed*' --job short]
          --out  also writes one table of all of them, with commit and machine
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var file = Option(arguments, "--out");
        var own = file is null ? arguments.Count : arguments.ToList().IndexOf("--out");
        string[] passed = [.. arguments.Take(own), .. arguments.Skip(own + 2)];
        Summary[] summaries = [.. BenchmarkSwitcher.FromAssembly(typeof(KernelsJob).Assembly).Run(passed.Length > 0 ? passed : ["--filter", "*"])];
        if (file is not null) File.WriteAllText(file, Page(passed, [.. summaries.SelectMany(summary => summary.Reports)]));
        return summaries.Length > 0 && summaries.All(summary => !summary.HasCriticalValidationErrors && summary.Reports.All(report => report.Success)) ? 0 : 1;
    }

    private static string Page(string[] passed, IReadOnlyList<BenchmarkReport> reports) => string.Join('\n',
    [
        "# Numerical kernels",
        "",
        $"Command `{string.Join(' ', ["kernels", .. passed])}`, commit {Provenance.Commit()}, {Provenance.Machine()}. Made data from fixed seeds.",
        "",
        "| kernel | sizes | mean, ms | SD, ms | allocated, kB |",
        "| --- | --- | ---: | ---: | ---: |",
        .. reports.Select(Line),
        "",
    ]);

    private static string Line(BenchmarkReport report)
    {
        var benchmark = report.BenchmarkCase;
        var (mean, deviation) = report.ResultStatistics is { } times ? (Milliseconds(times.Mean), Milliseconds(times.StandardDeviation)) : ("failed", "");
        var allocated = report.GcStats.GetBytesAllocatedPerOperation(benchmark) is { } bytes ? (bytes / 1024.0).ToString("0.0", CultureInfo.InvariantCulture) : "";
        return $"| {benchmark.Descriptor.WorkloadMethodDisplayInfo.Trim('\'')} | {benchmark.Parameters.PrintInfo.Replace("&", ", ", StringComparison.Ordinal)} | {mean} | {deviation} | {allocated} |";
    }

    private static string Milliseconds(double nanoseconds) => (nanoseconds / NanosecondsPerMillisecond).ToString("G4", CultureInfo.InvariantCulture);
}
