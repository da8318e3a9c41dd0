using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>One boxer whose level drifts from week to week: coverage of the level as it is now and of one in mid-season.</summary>
/// <param name="sessions">Weekly sessions.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="driftTimes">SD of a week's drift, in times the noise of a session total.</param>
internal sealed class SeasonLevelExperiment(int sessions, double noisePercent, double driftTimes) : Experiment
{
    private readonly VirtualBoxer _boxer = new() { SetNoisePercent = noisePercent, DriftPercentPerSet = 0.6 };

    public override bool IsSlow => sessions > 20;

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"level now, {sessions} sessions, set noise {noisePercent} %, weekly drift {driftTimes} times the noise");

    public override IReadOnlyList<Question> Questions =>
    [
        // Where the level hardly drifts, intervals that count a drift are wider than need be; in hindsight they do so from both sides. None that were tried hold what they say there and beside it.
        Interval("level now", driftTimes == 0 ? Promise.AtLeast : Promise.Exactly),
        Interval("level in mid-season, in hindsight", Promise.AtLeast),
        new("a constant level fits best"),
        new("a level that follows every test fits best"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        double[] drift = new double[sessions];
        for (var week = 1; week < sessions; week++) drift[week] = drift[week - 1] + (driftTimes * VirtualSquad.NoisePercent(_boxer) / 100 * random.NextNormal());
        double Truth(int week) => VirtualSquad.MeanTotal(_boxer) * Math.Exp(drift[week]);
        var season = SeasonLevel.Fit(_boxer.Sessions(random, sessions, week => Math.Exp(drift[week])), new SeasonLevelOptions { Level = Level, Selection = SelectionOptions.KeepAll }).GetOrThrow();
        return
        [
            Covers(season.Latest, Truth(sessions - 1)),
            Covers(season.Points[sessions / 2].InHindsight, Truth(sessions / 2)),
            season.WeeklyDrift.Value == 0,
            season.Noise.Value == 0,
        ];
    }
}
