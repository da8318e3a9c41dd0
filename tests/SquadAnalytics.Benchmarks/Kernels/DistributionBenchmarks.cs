using BenchmarkDotNet.Attributes;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Kernels;

/// <summary>Distributions that take a quadrature or a search, at arguments of a usual report.</summary>
[MemoryDiagnoser]
public class DistributionBenchmarks
{
    /// <summary>The chance behind a power curve.</summary>
    [Benchmark(Description = "noncentral t, upper tail")]
    public double NoncentralTail() => NoncentralTDistribution.UpperTail(1.72, 21, 2.4);

    /// <summary>The limit of a standardised effect.</summary>
    [Benchmark(Description = "noncentral t, noncentrality of a limit")]
    public double Noncentrality() => NoncentralTDistribution.Noncentrality(2.4, 21, 0.05);

    /// <summary>Athletes for a power of 0.8.</summary>
    [Benchmark(Description = "sample size of a paired t test")]
    public double SampleSize() => TTestPower.SampleSize(0.8, 2, 5, new PowerOptions());

    /// <summary>Tukey's p-value among eight groups.</summary>
    [Benchmark(Description = "studentised range, upper tail")]
    public double StudentizedRange() => StudentizedRangeDistribution.UpperTail(3.9, 8, 40);

    /// <summary>The quantile of every interval.</summary>
    [Benchmark(Description = "t quantile")]
    public double TQuantile() => StudentTDistribution.UpperQuantile(0.05, 7.3);
}
