using SquadAnalytics.Change;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Two training blocks compared by a mixed model: false alarms, coverage and power.</summary>
/// <param name="blocks">The blocks.</param>
internal sealed class BlockModelExperiment(VirtualBlocks blocks) : Experiment
{
    public override bool IsSlow => true;

    public override string Setting => "mixed model of " + blocks.Setting;

    public override IReadOnlyList<Question> Questions =>
    [
        Interval("mixed model"),
        blocks.Alarm($"mixed model: {Level} interval leaves out 0", Promise.Exactly, 1 - Level.Fraction),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var change = BlockModel.Fit(blocks.Draw(random).Tests, blocks.First, blocks.Second, new BlockModelOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var model) ? model.Change : null;
        return [Covers(change, blocks.Change), Covers(change, 0) is { } covers ? !covers : null];
    }
}
