using BenchmarkDotNet.Attributes;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Kernels;

/// <summary>Rank methods: exact p-values, Walsh averages, pairwise slopes; made data in tenths, so that some tie.</summary>
[MemoryDiagnoser]
public class RankBenchmarks
{
    private double[] _weeks = null!;
    private double[] _changes = null!;

    /// <summary>How many differences, or points; the signed ranks are exact up to 200.</summary>
    [Params(20, 200, 3000)]
    public int Observations { get; set; }

    /// <summary>Makes the data from a fixed seed.</summary>
    [GlobalSetup]
    public void Setup()
    {
        var random = new SeededRandom(6);
        _weeks = [.. Enumerable.Range(0, Observations).Select(week => (double)week)];
        _changes = [.. _weeks.Select(_ => Math.Round(-1 + 3 * random.NextNormal(), 1))];
    }

    /// <summary>p, Hodges-Lehmann estimate and limits.</summary>
    [Benchmark(Description = "signed ranks with Hodges-Lehmann limits")]
    public SignedRankTest SignedRanks() => SignedRankTest.Fit(_changes, ConfidenceLevel.Ninety).GetOrThrow();

    /// <summary>The median pairwise slope and its limits.</summary>
    [Benchmark(Description = "Theil-Sen slope with limits")]
    public TheilSen Slope() => TheilSen.Fit(_weeks, _changes, ConfidenceLevel.Ninety).GetOrThrow();

    /// <summary>S, τ and p.</summary>
    [Benchmark(Description = "Kendall's tau")]
    public double Kendall() => KendallCorrelation.Fit(_weeks, _changes).GetOrThrow().PValue;
}
