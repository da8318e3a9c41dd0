using BenchmarkDotNet.Attributes;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Kernels;

/// <summary>Athletes crossed with test days: a random level of each athlete and of each day; made data.</summary>
[MemoryDiagnoser]
public class CrossedMixedModelBenchmarks
{
    private MixedDesign _design = null!;

    /// <summary>How many athletes, each tested on 25 days.</summary>
    [Params(20, 200)]
    public int Athletes { get; set; }

    /// <summary>Makes the data from a fixed seed.</summary>
    [GlobalSetup]
    public void Setup()
    {
        var random = new SeededRandom(2);
        var (athlete, day, seconds) = (new List<string>(), new List<string>(), new List<double>());
        double[] days = [.. Enumerable.Range(0, 25).Select(_ => 1.5 * random.NextNormal())];
        for (var a = 0; a < Athletes; a++)
        {
            var level = 320 + 25 * random.NextNormal();
            foreach (var (number, shared) in days.Index())
            {
                athlete.Add($"A{a}");
                day.Add($"D{number}");
                seconds.Add(level + shared + 2.5 * random.NextNormal());
            }
        }

        _design = new MixedDesign(
            new DesignColumn("seconds", seconds, Unit.Seconds),
            [DesignColumn.Intercept(seconds.Count, Unit.Seconds)],
            [RandomTerm.Intercept("athlete", athlete), RandomTerm.Intercept("day", day)]);
    }

    /// <summary>REML with Satterthwaite df.</summary>
    [Benchmark(Description = "mixed model, athletes crossed with days")]
    public MixedFit Fit() => MixedModel.Fit(_design).GetOrThrow();
}
