using BenchmarkDotNet.Attributes;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Kernels;

/// <summary>Exhaustive searches for a bend and for shifts of the mean; made data.</summary>
[MemoryDiagnoser]
public class SegmentedBenchmarks
{
    private double[] _x = null!;
    private double[] _y = null!;

    /// <summary>How many observations, each at an x of its own.</summary>
    [Params(12, 100, 1000)]
    public int Observations { get; set; }

    /// <summary>Makes the data from a fixed seed.</summary>
    [GlobalSetup]
    public void Setup()
    {
        var random = new SeededRandom(4);
        _x = [.. Enumerable.Range(0, Observations).Select(i => (double)i)];
        _y = [.. _x.Select(x => 62 + 5 * Math.Max(0, x / Observations - 0.6) + (x > Observations / 2 ? 2 : 0) + 0.5 * random.NextNormal())];
    }

    /// <summary>The knot and its profile limits.</summary>
    [Benchmark(Description = "bent line, knot searched")]
    public BrokenLineFit Bend() => BrokenLine.Fit(_x, _y).GetOrThrow();

    /// <summary>Up to five breaks.</summary>
    [Benchmark(Description = "shifts of the mean, up to 5 breaks")]
    public MeanShiftFit Shifts() => MeanShifts.Find(_y).GetOrThrow();
}
