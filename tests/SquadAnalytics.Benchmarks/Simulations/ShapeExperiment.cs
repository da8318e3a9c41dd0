using System.Globalization;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>The shape of one session with the set noise of others: false alarms and power.</summary>
/// <param name="sessions">Sessions that the set noise comes from.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="breakPercent">A break after set 3; 0 for even pacing.</param>
internal sealed class ShapeExperiment(int sessions, double noisePercent, double breakPercent) : Experiment
{
    private const int AfterSet = 3;
    private readonly VirtualBoxer _boxer = new() { SetNoisePercent = noisePercent, BreakAfter = AfterSet, BreakPercent = breakPercent };

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"shape of one session, noise of {sessions} others, set noise {noisePercent} %, {(breakPercent == 0 ? "even pace" : $"break of {breakPercent} % after set {AfterSet}")}");

    public override IReadOnlyList<Question> Questions =>
    [
        breakPercent == 0 ? new("not even", Promise.AtMost, 0.05) : new("not even"),
        new("a wrong shape named", Promise.AtMost, 0.05),
        new("the right shape named"),
        Interval("late contrast of one session"),
        new("refused"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var tests = _boxer.Sessions(random, sessions + 1);
        SetNoise.Fit([.. tests.Skip(1)], new SetNoiseOptions { Selection = SelectionOptions.KeepAll }).TryGet(out var noise);
        PacingShapeResult? shape = null;
        if (noise is not null) PacingShape.Summarize(tests[0], noise).TryGet(out shape);
        var right = breakPercent == 0 ? new ProfileShape(ShapeKind.Even) : new ProfileShape(ShapeKind.Step, AfterSet);
        SessionContrast? contrast = null;
        if (noise is not null) LateSlowdown.Summarize(tests[0], noise, AfterSet, Level).TryGet(out contrast);
        return
        [
            shape?.IsNotEven,
            shape is null ? null : shape.Shape is not null && shape.Shape != right,
            shape is null ? null : shape.Shape == right,
            Covers(contrast?.LateContrast, breakPercent),
            shape is null,
        ];
    }
}
