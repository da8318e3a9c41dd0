using System.Globalization;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Benchmarks.Comparisons;

/// <summary>Per-session measures of 1,000,000 sessions of 5 sets from memory, grouping included.</summary>
internal sealed class SessionMeasuresComparison : PeerComparison
{
    public override string Name => "session-measures";

    public override string Summary => "mean, SD, CV, best, last/first and decrement of 1,000,000 sessions from memory (data.table's grouped functions)";

    public override double PeerSeconds(string dataFolder)
    {
        if (!File.Exists(Path.Combine(dataFolder, "sets.csv"))) PeerScript.Run("Rscript", "peer_bench.R", dataFolder, "gen");
        var output = PeerScript.Run("Rscript", "peer_bench.R", dataFolder, "dt");
        return Math.Min(PeerScript.Numbers(output, "compute_plain_s").Min(), PeerScript.Numbers(output, "compute_gforce_s").Min());
    }

    public override double OurSeconds(string dataFolder)
    {
        // Five million rows: read as numbers, without a text for each.
        List<int> athletes = [], sessions = [];
        List<double> times = [];
        foreach (var line in File.ReadLines(Path.Combine(dataFolder, "sets.csv")).Skip(1))
        {
            int first = line.IndexOf(','), second = line.IndexOf(',', first + 1), third = line.IndexOf(',', second + 1);
            athletes.Add(int.Parse(line.AsSpan(0, first), CultureInfo.InvariantCulture));
            sessions.Add(int.Parse(line.AsSpan(first + 1, second - first - 1), CultureInfo.InvariantCulture));
            times.Add(double.Parse(line.AsSpan(third + 1), CultureInfo.InvariantCulture));
        }

        int[] athlete = [.. athletes], session = [.. sessions];
        double[] seconds = [.. times];

        // Checksums printed by data.table 1.14.8 and pandas 1.5.3 alike.
        var table = SetTable.Summarize(athlete, session, seconds);
        RequireClose("mean", 31145994.816, table.MeanSeconds.Sum(), 1e-3);
        RequireClose("SD", 402660.352037841, table.StandardDeviationSeconds.Sum(), 1e-4);
        RequireClose("CV", 1293903.390871846, table.VariationPercent.Sum(), 1e-4);
        RequireClose("best", 30650167.4, table.BestSeconds.Sum(), 1e-3);
        RequireClose("last to first", 1026341.327030815, table.LastToFirstRatio.Sum(), 1e-4);
        RequireClose("decrement", 1624370.462231179, table.DecrementPercent.Sum(), 1e-4);
        Memory = ((sizeof(int) + sizeof(int) + sizeof(double)) * (long)seconds.Length, Stopwatching.AllocatedBytes(() => SetTable.Summarize(athlete, session, seconds)));
        return Stopwatching.MedianSeconds(() => SetTable.Summarize(athlete, session, seconds), runs: 11, warmUps: 5);
    }
}
