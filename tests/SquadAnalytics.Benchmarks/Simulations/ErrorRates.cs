namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>The experiments behind the table of error rates.</summary>
internal static class ErrorRates
{
    private static readonly int[] SessionCounts = [4, 6, 8, 12, 20];
    private static readonly double[] NoisePercents = [1, 2, 3];

    /// <summary>All of them, in the order of the table.</summary>
    public static IReadOnlyList<Experiment> Experiments { get; } =
    [
        .. Cells((sessions, noise) => new LateSlowdownExperiment(sessions, noise, drift: 0, breakPercent: 0)),
        .. Cells((sessions, noise) => new LateSlowdownExperiment(sessions, noise, drift: 0.6, breakPercent: 0)),
        .. Cells((sessions, noise) => new LateSlowdownExperiment(sessions, noise, drift: 0.6, breakPercent: 5)),
        .. Cells((sessions, noise) => new StationExperiment(sessions, noise, breakPercent: 0)),
        .. Cells((sessions, noise) => new StationExperiment(sessions, noise, breakPercent: 5)),
        .. Cells((sessions, noise) => new ReliabilityExperiment(sessions, noise)),
        .. Cells((sessions, noise) => new VerdictExperiment(sessions, noise, worthwhileTimes: 0)),
        .. Cells((sessions, noise) => new VerdictExperiment(sessions, noise, worthwhileTimes: -1)),
        .. Cells((sessions, noise) => new VerdictExperiment(sessions, noise, worthwhileTimes: -3)),
        new VerdictExperiment(12, noisePercent: 1, worthwhileTimes: 0, sharedPercent: 1),
    ];

    private static IEnumerable<Experiment> Cells(Func<int, double, Experiment> make) =>
        from noise in NoisePercents
        from sessions in SessionCounts
        select make(sessions, noise);
}
