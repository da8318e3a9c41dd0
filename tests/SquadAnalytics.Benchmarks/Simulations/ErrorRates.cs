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
        .. Enum.GetValues<Plot>().SelectMany(plot => new[] { false, true }.SelectMany(isSearched => Cells((sessions, noise) => new ExplanationsExperiment(sessions, noise, plot, isSearched)))),
        .. Cells((sessions, noise) => new StartExperiment(sessions, noise, spreadPercent: 3, slope: 0, formPercent: 0)),
        .. Cells((sessions, noise) => new StartExperiment(sessions, noise, spreadPercent: 3, slope: -0.5, formPercent: 0)),
        .. Cells((sessions, noise) => new StartExperiment(sessions, noise, spreadPercent: 0, slope: 0, formPercent: 0.8)),
        .. Cells((sessions, noise) => new ShapeExperiment(sessions, noise, breakPercent: 0)),
        .. Cells((sessions, noise) => new ShapeExperiment(sessions, noise, breakPercent: 5)),
        .. Cells((sessions, noise) => new TrendExperiment(sessions, noise, percentPerWeek: 0)),
        .. Cells((sessions, noise) => new TrendExperiment(sessions, noise, percentPerWeek: -0.3)),
        .. from noise in NoisePercents
           from sessions in new[] { 12, 20, 40 }
           from drift in new[] { 0, 0.25, 0.5, 1 }
           select new SeasonLevelExperiment(sessions, noise, drift),
        .. Blocks.Select(blocks => new BlockExperiment(blocks)),
        .. Blocks.Select(blocks => new BlockModelExperiment(blocks)),
        .. Cells((sessions, noise) => new InterruptedExperiment(sessions, noise, jumpPercent: 0)),
        .. Cells((sessions, noise) => new InterruptedExperiment(sessions, noise, jumpPercent: -3)),
        .. NoisePercents.SelectMany(noise => SessionCounts.Where(sessions => sessions >= 10).Select(sessions => new RecoveryExperiment(sessions, noiseSeconds: 0.6 * noise))),
        .. Cells((sessions, noise) => new StandingExperiment(sessions, noise)),
        .. Cells((sessions, noise) => new AgreementExperiment(sessions, noise)),
        .. Cells((sessions, noise) => new SquadModelsExperiment(sessions, noise)),
        new OneSessionExperiment(noisePercent: 1, step: 0, rates: [50, 0.6, 9, 0.1]),
        new OneSessionExperiment(noisePercent: 1, step: 0.05, rates: [100, 10, 86, 10]),
        new OneSessionExperiment(noisePercent: 2, step: 0.05, rates: [90, 2.5, 53, 1.8]),
        new OneSessionExperiment(noisePercent: 3, step: 0.05, rates: [76, 1.4, 32, 0.8]),
        new BorrowedNoiseExperiment(others: 6, noisePercent: 2, step: 0, notEven: 2.6, lowest: null),
        new BorrowedNoiseExperiment(others: 11, noisePercent: 2, step: 0, notEven: 1.9, lowest: null),
        new BorrowedNoiseExperiment(others: 6, noisePercent: 1, step: 0.05, notEven: 99, lowest: 74),
        new BorrowedNoiseExperiment(others: 6, noisePercent: 2, step: 0.05, notEven: 45, lowest: 20),
        new BorrowedNoiseExperiment(others: 6, noisePercent: 3, step: 0.05, notEven: 19, lowest: 6),
        new IdentifiabilityExperiment(sessions: 1, edge: 97, coverage: 95),
        new IdentifiabilityExperiment(sessions: 6, edge: 42, coverage: 90),
        new IdentifiabilityExperiment(sessions: 10, edge: 20, coverage: 90),
        new IdentifiabilityExperiment(sessions: 20, edge: 4, coverage: 90),
    ];

    private static IEnumerable<VirtualBlocks> Blocks =>
    [
        .. Cells((sessions, noise) => new VirtualBlocks(VirtualSquad.Size, sessions, noise, ChangePercent: 0)),
        .. Cells((sessions, noise) => new VirtualBlocks(VirtualSquad.Size, sessions, noise, ChangePercent: -2)),
        new(Athletes: 5, Sessions: 8, NoisePercent: 2, ChangePercent: 0),
        new(Athletes: 24, Sessions: 8, NoisePercent: 2, ChangePercent: 0),
    ];

    private static IEnumerable<T> Cells<T>(Func<int, double, T> make) =>
        from noise in NoisePercents
        from sessions in SessionCounts
        select make(sessions, noise);
}
