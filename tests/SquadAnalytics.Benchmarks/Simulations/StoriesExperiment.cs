using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.SampleSquad;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>The sample squad drawn anew: are its stories found, and is the boxer without one left in peace?</summary>
internal sealed class StoriesExperiment : Experiment
{
    private const double WorthwhileShareOfBand = 10;
    private readonly SampleScenario _scenario = Scenarios.Quillmere;

    public override bool IsSlow => true;

    public override string Setting => "sample squad drawn anew";

    public override IReadOnlyList<Question> Questions =>
    [
        new("late breaker: slows after set 3, found by searching", Promise.AtLeast, 0.80),
        new("late breaker: the station named alone", Promise.AtLeast, 0.80),
        new("late breaker: both set and station", Promise.AtLeast, 0.80),
        new("fast starter: slows after set 1, found by searching"),
        new("noise only: last test a worthwhile change", Promise.AtMost, 0.05),
        new("noise only: last test slower or faster, size unclear", Promise.Exactly, 0.10),
        new("noise only: interval leaves out 0", Promise.Exactly, 0.10),
        new("noise only: slows after some set, found by searching", Promise.AtMost, 0.05),
        new("improver: last three tests faster by a worthwhile amount than the first three", Promise.AtLeast, 0.80),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var generated = SquadGenerator.Generate(_scenario.WithSeed(random.NextIndex(int.MaxValue)));
        var main = new SelectionOptions { Protocol = _scenario.MainTest.Protocol };
        // The middle band: all are equally wide.
        var worthwhile = SmallestWorthwhileChange.FromBand(_scenario.MainTest.Protocol.Bands[2], new Percent(WorthwhileShareOfBand));
        var error = TypicalError.Fit(generated.Squad, new TypicalErrorOptions { Selection = main, Blocks = generated.Squad.Blocks }).GetOrThrow();
        var story = (LateBreak)generated.Truth.LateBreaker.Story!;
        var late = Search(generated.Truth.LateBreaker);
        var named = StationShares.Fit(TestsOf(generated.Truth.LateBreaker), new StationSharesOptions { AfterSet = story.AfterSet, Selection = main }).TryGet(out var shares)
            && shares.Concentrated is [var only] && only.Name == story.Station;
        var broken = late is { SlowsAfterSet: true } && late.AfterSet == story.AfterSet;
        var fast = Search(generated.Truth.FastStarter);
        var noise = Search(generated.Truth.NoiseOnly);
        var change = AthleteChange.Fit(TestsOf(generated.Truth.NoiseOnly), error, worthwhile, new AthleteChangeOptions { Selection = main }).GetOrThrow();
        var improver = SessionSelection.Of(TestsOf(generated.Truth.Improver), main).GetOrThrow().Sessions;
        var better = AthleteChange.Between([.. improver.Take(3)], [.. improver.TakeLast(3)], error, worthwhile, new AthleteChangeOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        return
        [
            broken,
            named,
            broken && named,
            fast is { SlowsAfterSet: true, AfterSet: 1 },
            change.Verdict is ChangeVerdict.FasterWorthwhile or ChangeVerdict.SlowerWorthwhile,
            change.Verdict is ChangeVerdict.FasterSizeUnclear or ChangeVerdict.SlowerSizeUnclear,
            change.Change.Lower > 0 || change.Change.Upper < 0,
            noise?.SlowsAfterSet,
            better.Verdict == ChangeVerdict.FasterWorthwhile,
        ];

        IReadOnlyList<Session> TestsOf(BoxerTruth boxer) => generated.Squad.SessionsOf(boxer.AthleteId);

        LateSlowdownResult? Search(BoxerTruth boxer) =>
            LateSlowdown.Fit(TestsOf(boxer), new LateSlowdownOptions { Scale = Scale.Log, Selection = main }).TryGet(out var result) ? result : null;
    }
}
