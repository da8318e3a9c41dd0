using BenchmarkDotNet.Attributes;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Kernels;

/// <summary>Sets within sessions within athletes: random level and trend of each athlete, random level of each session; made data.</summary>
[MemoryDiagnoser]
public class NestedMixedModelBenchmarks
{
    private MixedDesign _design = null!;

    /// <summary>How many athletes, with 20 sessions of 5 sets each.</summary>
    [Params(10, 50)]
    public int Athletes { get; set; }

    /// <summary>Makes the data from a fixed seed.</summary>
    [GlobalSetup]
    public void Setup() => _design = Design(Athletes);

    /// <summary>REML with Satterthwaite df.</summary>
    [Benchmark(Description = "mixed model, sets in sessions in athletes")]
    public MixedFit Fit() => MixedModel.Fit(_design).GetOrThrow();

    internal static MixedDesign Design(int athletes)
    {
        var random = new SeededRandom(3);
        var (athlete, session, sets, seconds) = (new List<string>(), new List<string>(), new List<double>(), new List<double>());
        for (var a = 0; a < athletes; a++)
        {
            var (level, trend) = (62 + 4 * random.NextNormal(), 1 + 0.4 * random.NextNormal());
            for (var s = 0; s < 20; s++)
            {
                var day = 1.2 * random.NextNormal();
                for (var k = 0; k < 5; k++)
                {
                    athlete.Add($"A{a}");
                    session.Add($"{s}");
                    sets.Add(k - 2);
                    seconds.Add(level + day + trend * sets[^1] + 0.6 * random.NextNormal());
                }
            }
        }

        var set = new DesignColumn("set", sets, Unit.SecondsPerSet);
        return new MixedDesign(
            new DesignColumn("seconds", seconds, Unit.Seconds),
            [DesignColumn.Intercept(seconds.Count, Unit.Seconds), set],
            [RandomTerm.InterceptAndSlope("athlete", athlete, set), RandomTerm.Nested("session", athlete, session)]);
    }
}
