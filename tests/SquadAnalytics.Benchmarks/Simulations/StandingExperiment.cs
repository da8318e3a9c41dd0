using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Standing;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Ranks, bands and shrunken changes in a squad: coverage of what is announced.</summary>
/// <param name="sessions">Sessions of each boxer; the typical error comes from all but the last.</param>
/// <param name="noisePercent">Set noise.</param>
internal sealed class StandingExperiment(int sessions, double noisePercent) : Experiment
{
    private const double ChangePercent = 1;
    private const int Recent = 3;

    /// <summary>Together a shrunken change and ranks take more than 5 ms.</summary>
    public override bool IsSlow => true;

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"standing, squad of {VirtualSquad.Size}, {sessions} sessions, set noise {noisePercent} %");

    public override IReadOnlyList<Question> Questions =>
    [
        IntervalAsStated("rank of one boxer"),
        new("band of a first test named wrongly", Promise.AtMost, 0.10),
        Interval("shrunken change of one boxer"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var boxers = VirtualSquad.Draw(random, noisePercent);
        boxers = [boxers[0] with { LevelPercent = random.NextNormal() * VirtualSquad.LevelSpreadPercent }, .. boxers.Skip(1)];
        double[] changes = [.. boxers.Select(_ => random.NextNormal() * ChangePercent / 100)];
        var tests = boxers.Select((boxer, index) => boxer.Sessions(random, sessions, session => session == sessions - 1 ? 1 + changes[index] : 1)).ToList();
        IReadOnlyList<Session> all = [.. tests.SelectMany(own => own)];
        double[] levels = [.. boxers.Select(VirtualSquad.Total)];
        var keep = SelectionOptions.KeepAll with { To = tests[0][^2].Date };
        TypicalError.Fit(all, new TypicalErrorOptions { Selection = keep }).TryGet(out var error);
        return
        [
            Rank(tests, levels, error),
            Band(tests[0], levels[0], error),
            Shrunken(all, changes[0] * levels[0], error),
        ];
    }

    private Reply Rank(List<IReadOnlyList<Session>> tests, double[] levels, TypicalErrorResult? error)
    {
        if (error is null) return new Reply(null);
        var means = Math.Min(Recent, sessions - 1);
        Estimate Recently(IReadOnlyList<Session> own) => new(own.Take(sessions - 1).TakeLast(means).Average(test => test.TimesSeconds.Sum()), Unit.Seconds, means, "mean of recent tests") { StandardError = error.Estimate.Value / Math.Sqrt(means) };
        var ranked = Standing.Ranks.Fit([.. tests.Select(own => new AthleteLevel(own[0].AthleteId, Recently(own)))], new RankOptions { Level = Level, Draws = 1_000 }).GetOrThrow();
        var watched = ranked.Single(athlete => athlete.AthleteId == VirtualSquad.Watched);
        var rank = 1 + levels.Count(level => level < levels[0]);
        return new Reply(watched.From <= rank && rank <= watched.To, watched.Confidence);
    }

    private static bool? Band(IReadOnlyList<Session> own, double level, TypicalErrorResult? error)
    {
        if (error is null || !ProbableBand.Fit([own[0]], error, null, SelectionOptions.KeepAll).TryGet(out var band)) return null;
        var right = own[0].Protocol.BandsOn(own[0].Date).FirstOrDefault(candidate => candidate.Contains(new Seconds(level)))?.Name;
        return band.Announced is not null && right is not null && band.Announced != right;
    }

    private bool? Shrunken(IReadOnlyList<Session> all, double truth, TypicalErrorResult? error)
    {
        if (error is null) return null;
        var worthwhile = SmallestWorthwhileChange.Entered(new Seconds(3.6));
        var changes = SquadChanges.Fit(all, error, worthwhile, new SquadChangesOptions { Change = new AthleteChangeOptions { Selection = SelectionOptions.KeepAll } }).GetOrThrow();
        return ChangeShrinkage.Fit(changes, worthwhile, Level).TryGet(out var shrunken) ? Covers(shrunken.Rows.Single(row => row.AthleteId == VirtualSquad.Watched).Posterior, truth) : null;
    }
}
