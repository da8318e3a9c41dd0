using BenchmarkDotNet.Running;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Times the numerical kernels with BenchmarkDotNet.</summary>
internal sealed class KernelsJob : Job
{
    public override string Name => "kernels";

    public override string Summary => "Times the numerical kernels (BenchmarkDotNet; build with -c Release).";

    public override string Usage => "kernels [BenchmarkDotNet arguments, for example --filter '*Mixed*' --job short]";

    public override int Run(IReadOnlyList<string> arguments)
    {
        var reports = BenchmarkSwitcher.FromAssembly(typeof(KernelsJob).Assembly).Run(arguments.Count > 0 ? [.. arguments] : ["--filter", "*"]);
        return reports.Any() && reports.All(summary => !summary.HasCriticalValidationErrors) ? 0 : 1;
    }
}
