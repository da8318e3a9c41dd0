using BenchmarkDotNet.Attributes;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Kernels;

/// <summary>Mixed models of a squad: athletes with a random level and trend over weekly tests, some absent; made data.</summary>
[MemoryDiagnoser]
public class MixedModelBenchmarks
{
    private MixedDesign _design = null!;

    /// <summary>How many athletes.</summary>
    [Params(20, 2000)]
    public int Athletes { get; set; }

    /// <summary>How many tests each; every third athlete misses the last five.</summary>
    [Params(30)]
    public int Sessions { get; set; }

    /// <summary>Makes the data from a fixed seed.</summary>
    [GlobalSetup]
    public void Setup()
    {
        var random = new SeededRandom(1);
        var groups = new List<string>();
        var weeks = new List<double>();
        var seconds = new List<double>();
        for (var a = 0; a < Athletes; a++)
        {
            var (level, trend) = (320 + 25 * random.NextNormal(), -0.5 + 0.3 * random.NextNormal());
            for (var s = 0; s < (a % 3 == 0 ? Sessions - 5 : Sessions); s++)
            {
                groups.Add($"A{a}");
                weeks.Add(s - Sessions / 2.0);
                seconds.Add(level + trend * weeks[^1] + 2.5 * random.NextNormal());
            }
        }

        var week = new DesignColumn("week", weeks, Unit.SecondsPerWeek);
        _design = new MixedDesign(
            new DesignColumn("seconds", seconds, Unit.Seconds),
            [DesignColumn.Intercept(seconds.Count, Unit.Seconds), week],
            [RandomTerm.InterceptAndSlope("athlete", groups, week)]);
    }

    /// <summary>Random level and trend by REML with Satterthwaite df.</summary>
    [Benchmark(Description = "mixed model, level and trend of athletes")]
    public MixedFit Fit() => MixedModel.Fit(_design).GetOrThrow();
}
