using SquadAnalytics.Change;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Two training blocks compared athlete by athlete: false alarms, coverage and power.</summary>
/// <param name="blocks">The blocks.</param>
internal sealed class BlockExperiment(VirtualBlocks blocks) : Experiment
{
    public override string Setting => blocks.Setting;

    public override IReadOnlyList<Question> Questions =>
    [
        Interval("change"),
        Interval("change in percent"),
        Interval("weighted change"),
        // Ranks of a few changes cannot hit a level; the result states the confidence that its limits really have.
        IntervalAsStated("rank-based change"),
        Interval("SD of changes"),
        Interval("noise within a block"),
        Interval("groups, adjusted"),
        Interval("groups, difference of changes"),
        blocks.Alarm($"{Level} interval of the change leaves out 0", Promise.Exactly, 1 - Level.Fraction),
        blocks.Alarm("sign flips: p at most 0.10", Promise.AtMost, 0.10),
        blocks.Alarm("signed ranks: p at most 0.10", Promise.AtMost, 0.10),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var (tests, within) = blocks.Draw(random);
        BlockComparison.Fit(tests, blocks.First, blocks.Second, new BlockComparisonOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var fit);
        if (fit is null) return new Reply[Questions.Count];
        var groups = Groups(fit);
        return
        [
            Covers(fit.Change, blocks.Change),
            Covers(fit.RelativeChange, Percent.FromLog(blocks.ChangePercent / 100).Value),
            Covers(Value(fit.WeightedChange), blocks.Change),
            new(Covers(Value(fit.RankChange), blocks.Change), Achieved(fit)),
            Covers(fit.StandardDeviationOfChanges, blocks.SpreadOfChanges),
            Covers(Value(fit.WithinBlock), within),
            Covers(groups?.Difference, 0),
            Covers(groups?.DifferenceOfChanges, 0),
            Covers(fit.Change, 0) == false,
            Value(fit.SignFlipPValue)?.Value is { } flips ? flips <= 0.10 : null,
            Value(fit.RankChange)?.PValue is { } ranks ? ranks <= 0.10 : null,
        ];
    }

    private static Estimate? Value(Answer<Estimate> answer) => answer.TryGet(out var value) ? value : null;

    private double? Achieved(BlockComparisonResult fit) => SignedRankTest.Fit([.. fit.Athletes.Select(row => row.ChangeSeconds)], Level).GetOrThrow().AchievedConfidence;

    private GroupDifferenceResult? Groups(BlockComparisonResult fit) =>
        GroupDifference.Fit([.. fit.Athletes.Select((row, index) => new BeforeAndAfter(row.AthleteId, index % 2 == 0 ? "even" : "odd", new Seconds(row.FirstMeanSeconds), new Seconds(row.SecondMeanSeconds)))], "even", Level).TryGet(out var groups) ? groups : null;
}
