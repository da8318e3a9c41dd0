using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Two training blocks of one squad whose boxers change by different amounts: false alarms, coverage and power.</summary>
/// <param name="athletes">How many boxers.</param>
/// <param name="sessions">Sessions of each, half of them in either block.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="changePercent">The mean true change from block to block, in percent.</param>
internal sealed class BlockExperiment(int athletes, int sessions, double noisePercent, double changePercent) : Experiment
{
    private const double ResponsePercent = 1;
    private static readonly DateOnly FirstDay = new(2030, 9, 5);
    private readonly VirtualBoxer _model = new() { SetNoisePercent = noisePercent, DriftPercentPerSet = 0.6 };

    /// <summary>Together two comparisons and two mixed models take more than 5 ms.</summary>
    public override bool IsSlow => true;

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"blocks, {athletes} boxers, {sessions / 2} + {sessions / 2} sessions, set noise {noisePercent} %, change {changePercent} %");

    public override IReadOnlyList<Question> Questions =>
    [
        Interval("change"),
        Interval("change in percent"),
        Interval("weighted change"),
        Interval("rank-based change", Promise.AtLeast),
        Interval("SD of changes"),
        Interval("noise within a block"),
        Interval("mixed model"),
        Interval("groups, adjusted"),
        Interval("groups, difference of changes"),
        Alarm($"{Level} interval of the change leaves out 0", Promise.Exactly, 1 - Level.Fraction),
        Alarm("sign flips: p at most 0.10", Promise.AtMost, 0.10),
        Alarm("signed ranks: p at most 0.10", Promise.AtMost, 0.10),
        Alarm($"mixed model: {Level} interval leaves out 0", Promise.Exactly, 1 - Level.Fraction),
    ];

    public override IReadOnlyList<bool?> Trial(SeededRandom random)
    {
        var half = sessions / 2;
        var first = new TrainingBlock("b1", "first", FirstDay, FirstDay.AddDays(7 * half - 1));
        var second = new TrainingBlock("b2", "second", FirstDay.AddDays(7 * half), FirstDay.AddDays(7 * sessions));
        var boxers = Enumerable.Range(1, athletes).Select(number => _model with { Id = "a" + number, LevelPercent = random.NextNormal() * VirtualSquad.LevelSpreadPercent }).ToList();
        double[] changes = [.. boxers.Select(_ => (changePercent + (ResponsePercent * random.NextNormal())) / 100)];
        IReadOnlyList<Session> tests = [.. boxers.SelectMany((boxer, index) => boxer.Sessions(random, sessions, session => session < half ? 1 : Math.Exp(changes[index])))];
        // A boxer's total and the change in it are drawn independently, so that the mean change in seconds is that of the middling boxer.
        var total = VirtualSquad.Total(_model);
        var truth = total * Math.Exp(ResponsePercent * ResponsePercent / 20_000) * Math.Exp(changePercent / 100) - total;
        var noise = VirtualSquad.NoisePercent(_model) / 100;
        BlockComparison.Fit(tests, first, second, new BlockComparisonOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var fit);
        BlockModel.Fit(tests, first, second, new BlockModelOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var model);
        var groups = Groups(fit);
        var spread = total * Math.Sqrt((ResponsePercent * ResponsePercent / 10_000) + (2 * noise * noise / half));
        return
        [
            Covers(fit?.Change, truth),
            Covers(fit?.RelativeChange, Percent.FromLog(changePercent / 100).Value),
            Covers(Value(fit?.WeightedChange), truth),
            Covers(Value(fit?.RankChange), truth),
            Covers(fit?.StandardDeviationOfChanges, spread),
            Covers(Value(fit?.WithinBlock), total * noise * (1 + (changePercent / 200))),
            Covers(model?.Change, truth),
            Covers(groups?.Difference, 0),
            Covers(groups?.DifferenceOfChanges, 0),
            fit is null ? null : Covers(fit.Change, 0) == false,
            Value(fit?.SignFlipPValue)?.Value is { } flips ? flips <= 0.10 : null,
            Value(fit?.RankChange)?.PValue is { } ranks ? ranks <= 0.10 : null,
            model is null ? null : Covers(model.Change, 0) == false,
        ];
    }

    private static Estimate? Value(Answer<Estimate>? answer) => answer is not null && answer.TryGet(out var value) ? value : null;

    private GroupDifferenceResult? Groups(BlockComparisonResult? fit) =>
        fit is not null && GroupDifference.Fit([.. fit.Athletes.Select((row, index) => new BeforeAndAfter(row.AthleteId, index % 2 == 0 ? "even" : "odd", new Seconds(row.FirstMeanSeconds), new Seconds(row.SecondMeanSeconds)))], "even", Level).TryGet(out var groups) ? groups : null;

    private Question Alarm(string text, Promise promise, double rate) => changePercent == 0 ? new Question(text, promise, rate) : new Question(text);
}
