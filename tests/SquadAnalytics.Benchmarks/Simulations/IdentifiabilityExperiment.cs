using System.Globalization;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Why the recovery recursion asks for ten sessions: how often its set of time constants runs into the edge of the grid, below ten sessions too. The rates were simulated in R 4.2.2 (2 000 runs).</summary>
/// <param name="sessions">Sessions of the boxer.</param>
/// <param name="edge">Percent of runs whose 90 % set reaches an edge, from R.</param>
/// <param name="coverage">Percent of runs whose set covers, edges included, from R.</param>
internal sealed class IdentifiabilityExperiment(int sessions, double edge, double coverage) : Experiment
{
    private const double NoiseSeconds = 0.8;
    private const int GridPoints = 120;

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"identifiability of recovery, {sessions} sessions, set noise {NoiseSeconds} s");

    public override IReadOnlyList<Question> Questions =>
    [
        new("90 % set reaches an edge", Promise.Exactly, edge / 100),
        new("90 % set covers", Promise.Exactly, coverage / 100),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        IReadOnlyList<ClockSet>[] clocks = [.. Enumerable.Range(0, sessions).Select(_ => RollingClock.Run(RecoveryExperiment.Draw(random, NoiseSeconds), 5, 120))];
        RecoveryFit[] grid = [.. Enumerable.Range(0, GridPoints).Select(point => Recovery.At(clocks, 15 * Math.Pow(40, point / (GridPoints - 1.0))))];
        var n = 5 * sessions;
        var bound = grid.Min(fit => fit.ResidualSumOfSquares) * (1 + (FDistribution.Quantile(0.90, 1, n - 3) / (n - 3)));
        bool IsInside(RecoveryFit fit) => fit.ResidualSumOfSquares <= bound;
        return [IsInside(grid[0]) || IsInside(grid[^1]), IsInside(Recovery.At(clocks, RecoveryExperiment.TimeConstant))];
    }
}
