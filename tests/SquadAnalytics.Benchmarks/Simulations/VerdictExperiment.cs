using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>The week-on-week verdicts about one boxer of a squad whose last test differs by a known amount.</summary>
/// <param name="sessions">Sessions of each boxer, the last one included.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="worthwhileTimes">The true change of the last test in units of the smallest worthwhile change; negative is faster.</param>
/// <param name="sharedPercent">SD of what a test day does to everybody at once, in percent: heat, a floor, a hard week. Nothing is promised then:
/// the typical error leaves such days out by design, so that they count as change.</param>
internal sealed class VerdictExperiment(int sessions, double noisePercent, double worthwhileTimes, double sharedPercent = 0) : Experiment
{
    private const double WorthwhileSeconds = 3.6;

    public override bool IsSlow => true;

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"week on week, {sessions} sessions, set noise {noisePercent} %, true change {worthwhileTimes} S{(sharedPercent == 0 ? "" : $", test days differ by {sharedPercent} % for all")}");

    public override IReadOnlyList<Question> Questions => sharedPercent == 0 ? Promised : [.. Promised.Select(question => new Question(question.Text))];

    private IReadOnlyList<Question> Promised =>
    [
        Interval("change"),
        worthwhileTimes == 0 ? new("interval leaves out 0", Promise.Exactly, 0.10) : new("interval leaves out 0"),
        worthwhileTimes switch
        {
            0 => new("verdict: a worthwhile amount", Promise.AtMost, 0.05),
            -1 => new("verdict: a worthwhile amount", Promise.Exactly, 0.05),
            _ => new("verdict: a worthwhile amount"),
        },
        new("verdict: size unclear"),
        worthwhileTimes <= -1 ? new("verdict: no worthwhile change", Promise.AtMost, 0.05) : new("verdict: no worthwhile change"),
        new("verdict: not clear"),
        worthwhileTimes == 0 ? new("last two tests differ by more than the 95 % detectable change", Promise.Exactly, 0.05) : new("last two tests differ by more than the 95 % detectable change"),
        worthwhileTimes == 0 ? new("anybody in the squad flagged", Promise.AtMost, 0.10) : new("anybody in the squad flagged"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var boxers = VirtualSquad.Draw(random, noisePercent);
        var change = worthwhileTimes * WorthwhileSeconds;
        var shared = Enumerable.Range(0, sessions).Select(_ => Math.Exp(random.NextNormal() * sharedPercent / 100)).ToArray();
        IReadOnlyList<Session> tests =
        [
            .. boxers.SelectMany(boxer => boxer.Sessions(random, sessions, session => shared[session] * (boxer.Id == VirtualSquad.Watched && session == sessions - 1 ? 1 + (change / VirtualSquad.Total(boxer)) : 1))),
        ];
        var watched = tests.Where(test => test.AthleteId == VirtualSquad.Watched).ToList();
        var worthwhile = SmallestWorthwhileChange.Entered(new Seconds(WorthwhileSeconds));
        // The noise comes from the tests before the one in question: a true change inside it would widen the interval.
        if (!TypicalError.Fit(tests, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll with { To = watched[^2].Date } }).TryGet(out var error)) return new Reply[Questions.Count];
        var result = AthleteChange.Fit(watched, error, worthwhile, new AthleteChangeOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var counted = AthleteChange.Fit(watched, error, worthwhile, new AthleteChangeOptions { Selection = SelectionOptions.KeepAll, Level = Level }).GetOrThrow();
        var squad = SquadChanges.Fit(tests, error, worthwhile, new SquadChangesOptions { Change = new AthleteChangeOptions { Selection = SelectionOptions.KeepAll } }).GetOrThrow();
        var difference = Math.Abs(watched[^1].TimesSeconds.Sum() - watched[^2].TimesSeconds.Sum());
        return
        [
            Covers(counted.Change, change),
            result.Change.Lower > 0 || result.Change.Upper < 0,
            result.Verdict is ChangeVerdict.FasterWorthwhile or ChangeVerdict.SlowerWorthwhile,
            result.Verdict is ChangeVerdict.FasterSizeUnclear or ChangeVerdict.SlowerSizeUnclear,
            result.Verdict == ChangeVerdict.NoWorthwhileChange,
            result.Verdict == ChangeVerdict.NotClear,
            difference > MinimalDetectableChange.Fit(error).Value,
            squad.Rows.Any(row => row.IsFlagged),
        ];
    }
}
