using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>One boxer's series with a jump and a bend at a known date: coverage of both.</summary>
/// <param name="sessions">Weekly sessions, half before and half after.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="jumpPercent">The jump, in percent of the first total; 0 for none.</param>
internal sealed class InterruptedExperiment(int sessions, double noisePercent, double jumpPercent) : Experiment
{
    private static readonly DateOnly FirstDay = new(2030, 9, 5);
    private readonly VirtualBoxer _boxer = new() { SetNoisePercent = noisePercent, DriftPercentPerSet = 0.6 };

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"interrupted series, {sessions / 2} + {sessions / 2} sessions, set noise {noisePercent} %, jump {jumpPercent} %");

    public override IReadOnlyList<Question> Questions =>
    [
        Interval("jump"),
        Interval("slope change"),
        Interval("effect at the end"),
        Interval("jump, Newey-West"),
        Interval("slope change, Newey-West"),
        jumpPercent == 0 ? new($"{Level} interval of the jump leaves out 0", Promise.Exactly, 1 - Level.Fraction) : new($"{Level} interval of the jump leaves out 0"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var half = sessions / 2;
        var bend = jumpPercent / sessions;
        double Factor(int session) => 1 - (0.001 * session) + (session < half ? 0 : (jumpPercent + (bend * (session - half))) / 100);
        var tests = _boxer.Sessions(random, sessions, Factor);
        if (!InterruptedSeries.Fit(tests, FirstDay.AddDays(7 * half), new InterruptedSeriesOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var fit)) return new Reply[Questions.Count];
        var total = VirtualSquad.Total(_boxer) / 100;
        return
        [
            Covers(fit.LevelChange, jumpPercent * total),
            Covers(fit.SlopeChange, bend * total),
            Covers(fit.EffectAtEnd, (jumpPercent + (bend * (half - 1))) * total),
            Covers(fit.SerialLevelChange, jumpPercent * total),
            Covers(fit.SerialSlopeChange, bend * total),
            Covers(fit.LevelChange, 0) == false,
        ];
    }
}
