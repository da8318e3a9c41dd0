using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>Mixed models of a squad whose boxers improve by different amounts and break late by different amounts: coverage of their intervals.</summary>
/// <param name="sessions">Weekly sessions of each boxer.</param>
/// <param name="noisePercent">Set noise.</param>
internal sealed class SquadModelsExperiment(int sessions, double noisePercent) : Experiment
{
    private const int AfterSet = 3;
    private const double TrendPercent = -0.3;
    private const double TrendSpread = 0.15;
    private const double BreakSpread = 1;

    public override bool IsSlow => true;

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"squad models, squad of {VirtualSquad.Size}, {sessions} sessions, set noise {noisePercent} %");

    public override IReadOnlyList<Question> Questions =>
    [
        new("season's slope: 90 % interval covers", Promise.Exactly, 0.90),
        new("season's slope: 95 % interval covers", Promise.Exactly, 0.95),
        new("mean of own slopes: 90 % interval covers", Promise.Exactly, 0.90),
        new("season's slope in percent: 90 % interval covers", Promise.Exactly, 0.90),
        new("level of one boxer in the season: 90 % interval covers", Promise.Exactly, 0.90),
        new("slope of one boxer: 90 % interval covers", Promise.Exactly, 0.90),
        new("slope of one boxer: 95 % interval covers", Promise.Exactly, 0.95),
        new("slope of one boxer is refused"),
        new("own slope of one boxer: 90 % interval covers", Promise.Exactly, 0.90),
        new("spread of responses over the season: 90 % interval covers", Promise.Exactly, 0.90),
        new("late contrast of the squad: 90 % interval covers", Promise.Exactly, 0.90),
        new("kink contrast of the squad: 90 % interval covers", Promise.Exactly, 0.90),
        new("late contrast of one boxer: 90 % interval covers", Promise.Exactly, 0.90),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var boxers = VirtualSquad.Draw(random, noisePercent).Select(boxer => boxer with { BreakAfter = AfterSet, BreakPercent = 3 + (BreakSpread * random.NextNormal()) }).ToList();
        double[] totals = [.. boxers.Select(VirtualSquad.Total)];
        double[] slopes = [.. totals.Select(total => total * (TrendPercent + (TrendSpread * random.NextNormal())) / 100)];
        IReadOnlyList<Session> tests = [.. boxers.SelectMany((boxer, index) => boxer.Sessions(random, sessions, week => 1 + (slopes[index] * week / totals[index])))];
        var season = SquadTrend.Fit(tests, new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var wide = SquadTrend.Fit(tests, new SquadTrendOptions { Selection = SelectionOptions.KeepAll, Level = ConfidenceLevel.NinetyFive }).GetOrThrow();
        var profile = ProfileModel.Fit(tests, new ProfileModelOptions(AfterSet) { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var watched = boxers[0];
        var middling = watched with { LevelPercent = 0, BreakPercent = 3 };
        var slope = VirtualSquad.Total(middling) * TrendPercent / 100;
        var (own, ownWide) = (season.Athlete(VirtualSquad.Watched), wide.Athlete(VirtualSquad.Watched));
        var late = profile.Athletes.Single(athlete => athlete.AthleteId == VirtualSquad.Watched).Late;
        var middle = (season.LevelOn.DayNumber - tests.Min(test => test.Date).DayNumber) / 7.0;
        return
        [
            Covers(season.Slope, slope),
            Covers(wide.Slope, slope),
            CoversWhereGiven(season.MeanOfOwnSlopes, slope),
            // The mean of the boxers' changes of logarithms over the season, per week.
            CoversWhereGiven(season.RelativeSlope, Percent.FromLog(Math.Log(1 + (TrendPercent / 100 * (sessions - 1))) / (sessions - 1)).Value),
            Covers(own.Level, VirtualSquad.MeanTotal(watched) * (1 + (slopes[0] * middle / totals[0]))),
            CoversWhereGiven(own.Slope, slopes[0]),
            CoversWhereGiven(ownWide.Slope, slopes[0]),
            !own.Slope.IsEstimated,
            CoversWhereGiven(own.OwnSlope, slopes[0]),
            ResponseSpread.OfSeason(season).TryGet(out var spread) ? Covers(spread.StandardDeviation, VirtualSquad.Total(middling) * TrendSpread / 100 * season.SpanWeeks) : null,
            Covers(profile.LateContrast, LatePercent(middling)),
            Covers(profile.KinkContrast, LatePercent(middling, Contrasts.Kink(middling.Test.Protocol.Sets, AfterSet))),
            CoversWhereGiven(late, LatePercent(watched)),
        ];
    }

    private static bool? CoversWhereGiven(Answer<Estimate> answer, double truth) => answer.TryGet(out var estimate) ? Covers(estimate, truth) : null;

    private static double LatePercent(VirtualBoxer boxer) => LatePercent(boxer, Contrasts.Late(boxer.Test.Protocol.Sets, AfterSet));

    private static double LatePercent(VirtualBoxer boxer, double[] weights) =>
        Percent.FromLog(Contrasts.Apply(weights, [.. Enumerable.Range(1, weights.Length).Select(set => Math.Log(boxer.ExpectedSet(set)))])).Value;
}
