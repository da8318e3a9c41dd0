using System.Globalization;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Which station carries the slow-down after set 3: false positives, coverage and power.</summary>
/// <param name="sessions">Sessions of the boxer.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="breakPercent">The break, all of it at one station; 0 for a steady drift that slows every station evenly.</param>
internal sealed class StationExperiment(int sessions, double noisePercent, double breakPercent) : Experiment
{
    private const int AfterSet = 3;
    private const int Station = 2;
    private readonly VirtualBoxer _boxer = new()
    {
        SetNoisePercent = noisePercent,
        DriftPercentPerSet = 0.6,
        BreakAfter = AfterSet,
        BreakPercent = breakPercent,
        BreakStation = Station,
    };

    public override string Setting => string.Create(CultureInfo.InvariantCulture,
        $"stations, {sessions} sessions, set noise {noisePercent} %, drift 0.6 % per set{(breakPercent == 0 ? "" : $", {breakPercent} % break at one station after set {AfterSet}")}");

    public override IReadOnlyList<Question> Questions =>
    [
        breakPercent > 0 ? new("any station named") : new("any station named", Promise.AtMost, 0.05),
        breakPercent == 0 ? new("the planted station named alone") : sessions >= 12 && noisePercent <= 1 ? new("the planted station named alone", Promise.AtLeast, 0.80) : new("the planted station named alone"),
        Interval("slow-down of one station"),
        Interval("beyond even slowing"),
        Interval("share, where it is given", breakPercent > 0 ? Promise.Exactly : Promise.None),
        new("share is refused"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var tests = _boxer.Sessions(random, sessions);
        if (!StationShares.Fit(tests, new StationSharesOptions { AfterSet = AfterSet, Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var result)) return new Reply[Questions.Count];
        var row = result.Rows[Station - 1];
        var named = result.Concentrated;
        var share = row.Share.TryGet(out var given) ? given : null;
        double early = Mean(1, AfterSet, StationTime), late = Mean(AfterSet + 1, 6, StationTime), whole = Mean(1, AfterSet, _boxer.ExpectedSet), slower = Mean(AfterSet + 1, 6, _boxer.ExpectedSet) - whole;
        return
        [
            named.Count > 0,
            named.Count == 1 && named[0].Station == Station,
            Covers(row.Slowdown, late - early),
            Covers(row.Excess, late - early - (slower * early / whole)),
            Covers(share, (late - early) / slower),
            share is null,
        ];
    }

    private static double Mean(int from, int to, Func<int, double> time) => Enumerable.Range(from, to - from + 1).Average(time);

    private double StationTime(int set) => _boxer.ExpectedStations(set)[Station - 1];
}
