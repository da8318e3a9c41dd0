using BenchmarkDotNet.Attributes;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Kernels;

/// <summary>Bias-corrected and accelerated limits of a coefficient of variation from 10,000 resamples; made data.</summary>
[MemoryDiagnoser]
public class BootstrapBenchmarks
{
    private double[] _seconds = null!;

    /// <summary>How many observations.</summary>
    [Params(17, 200)]
    public int Observations { get; set; }

    /// <summary>Makes the data from a fixed seed.</summary>
    [GlobalSetup]
    public void Setup()
    {
        var random = new SeededRandom(5);
        _seconds = [.. Enumerable.Range(0, Observations).Select(_ => 320 + 25 * random.NextNormal())];
    }

    /// <summary>Resamples and jackknife.</summary>
    [Benchmark(Description = "bootstrap, 10,000 resamples")]
    public BootstrapResult Resample() => Bootstrap.Of(_seconds, sample => 100 * Descriptive.StandardDeviation(sample) / Descriptive.Mean(sample), seed: 1).GetOrThrow();
}
