using System.Globalization;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>"Slows after set 3", named in advance and searched for: false positives, coverage and power.</summary>
/// <param name="sessions">Sessions of the boxer.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="drift">Steady slowing in percent per set.</param>
/// <param name="breakPercent">The planted break after set 3; 0 for none.</param>
internal sealed class LateSlowdownExperiment(int sessions, double noisePercent, double drift, double breakPercent) : Experiment
{
    private const int AfterSet = 3;
    private readonly VirtualBoxer _boxer = new() { SetNoisePercent = noisePercent, DriftPercentPerSet = drift, BreakAfter = AfterSet, BreakPercent = breakPercent };

    /// <summary>Above 12 sessions the search draws 9 999 flips.</summary>
    public override bool IsSlow => sessions > 12;

    public override string Setting => string.Create(CultureInfo.InvariantCulture,
        $"late slow-down, {sessions} sessions, set noise {noisePercent} %, {(drift == 0 ? "even pace" : $"drift {drift} % per set")}{(breakPercent == 0 ? "" : $", break of {breakPercent} % after set {AfterSet}")}");

    public override IReadOnlyList<Question> Questions =>
    [
        Slower("named: slower late", drift == 0),
        Slower("named: more than a steady drift", true),
        Both("named: slows after set 3"),
        Both("searched: slows after some set"),
        new("searched: slows after set 3 exactly"),
        Interval("late contrast"),
        Interval("late contrast in seconds"),
        Interval("beyond drift"),
        Interval("set noise"),
        Interval("slope of one session", breakPercent == 0 ? Promise.Exactly : Promise.None),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var tests = _boxer.Sessions(random, sessions);
        var named = Fit(tests, AfterSet, Scale.Log);
        var seconds = Fit(tests, AfterSet, Scale.Seconds);
        var searched = Fit(tests, null, Scale.Log);
        SetNoise.Fit(tests, new SetNoiseOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var noise);
        SetSlope.Fit(tests[0], new SetSlopeOptions { Level = Level }).TryGet(out var slope);
        var logs = Enumerable.Range(1, _boxer.Test.Protocol.Sets).Select(set => Math.Log(_boxer.ExpectedSet(set))).ToArray();
        var times = logs.Select(log => Math.Exp(log)).ToArray();
        return
        [
            named?.IsSlowerLate,
            named?.IsMoreThanSteadyDrift,
            named?.SlowsAfterSet,
            searched?.SlowsAfterSet,
            searched is null ? null : searched.SlowsAfterSet && searched.AfterSet == AfterSet,
            Covers(named?.LateContrast, Percent.FromLog(Late(logs)).Value),
            Covers(seconds?.LateContrast, Late(times)),
            Covers(named?.KinkContrast, Percent.FromLog(Late(logs) - (logs.Length / 2.0 * Slope(logs))).Value),
            Covers(noise?.Noise, Percent.FromLog(noisePercent / 100).Value),
            Covers(slope?.Linear, Slope(times)),
        ];
    }

    private LateSlowdownResult? Fit(IReadOnlyList<Session> tests, int? afterSet, Scale scale) =>
        LateSlowdown.Fit(tests, new LateSlowdownOptions { AfterSet = afterSet, Scale = scale, Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var result) ? result : null;

    private static double Late(double[] profile) => profile.Skip(AfterSet).Average() - profile.Take(AfterSet).Average();

    private static double Slope(double[] profile)
    {
        var middle = (profile.Length + 1) / 2.0;
        return profile.Select((time, index) => (index + 1 - middle) * time).Sum() / profile.Select((_, index) => (index + 1 - middle) * (index + 1 - middle)).Sum();
    }

    private Question Slower(string text, bool isNull) => breakPercent > 0 || !isNull ? new Question(text) : new Question(text, Promise.Exactly, Level.Alpha / 2);

    private Question Both(string text) => breakPercent > 0
        ? sessions >= 12 && noisePercent <= 1 ? new Question(text, Promise.AtLeast, 0.80) : new Question(text)
        : new Question(text, Promise.AtMost, Level.Alpha / 2);
}
