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
        new("slope of one boxer: 90 % interval covers", Promise.Exactly, 0.90),
        new("late contrast of the squad: 90 % interval covers", Promise.Exactly, 0.90),
        new("level of one boxer now: 90 % interval covers", Promise.Exactly, 0.90),
        new("level of one boxer now is refused"),
    ];

    public override IReadOnlyList<bool?> Trial(SeededRandom random)
    {
        var boxers = VirtualSquad.Draw(random, noisePercent).Select(boxer => boxer with { BreakAfter = AfterSet, BreakPercent = 3 + (BreakSpread * random.NextNormal()) }).ToList();
        double[] totals = [.. boxers.Select(VirtualSquad.Total)];
        double[] slopes = [.. totals.Select(total => total * (TrendPercent + (TrendSpread * random.NextNormal())) / 100)];
        IReadOnlyList<Session> tests = [.. boxers.SelectMany((boxer, index) => boxer.Sessions(random, sessions, week => 1 + (slopes[index] * week / totals[index])))];
        SquadTrend.Fit(tests, new SquadTrendOptions { Selection = SelectionOptions.KeepAll }).TryGet(out var season);
        SquadTrend.Fit(tests, new SquadTrendOptions { Selection = SelectionOptions.KeepAll, Level = ConfidenceLevel.NinetyFive }).TryGet(out var wide);
        ProfileModel.Fit(tests, new ProfileModelOptions(AfterSet) { Selection = SelectionOptions.KeepAll }).TryGet(out var profile);
        // A boxer whose level drifts by half the noise of a test from week to week.
        var watched = boxers[0];
        double[] drift = new double[sessions];
        for (var week = 1; week < sessions; week++) drift[week] = drift[week - 1] + (0.5 * VirtualSquad.NoisePercent(watched) / 100 * random.NextNormal());
        SeasonLevel.Fit(watched.Sessions(random, sessions, week => Math.Exp(drift[week])), new SeasonLevelOptions { Selection = SelectionOptions.KeepAll }).TryGet(out var level);
        var middling = VirtualSquad.Total(boxers[0] with { LevelPercent = 0, BreakPercent = 3 });
        var logs = Enumerable.Range(1, watched.Test.Protocol.Sets).Select(set => Math.Log((watched with { LevelPercent = 0, BreakPercent = 3 }).ExpectedSet(set))).ToArray();
        var own = season?.Athletes.FirstOrDefault(athlete => athlete.AthleteId == VirtualSquad.Watched);
        return
        [
            Covers(season?.Slope, middling * TrendPercent / 100),
            Covers(wide?.Slope, middling * TrendPercent / 100),
            Covers(season is not null && season.MeanOfOwnSlopes.TryGet(out var mean) ? mean : null, middling * TrendPercent / 100),
            Covers(own is not null && own.Slope.TryGet(out var slope) ? slope : null, slopes[0]),
            Covers(profile?.LateContrast, Percent.FromLog(logs.Skip(AfterSet).Average() - logs.Take(AfterSet).Average()).Value),
            Covers(level?.Latest, totals[0] * Math.Exp(drift[^1])),
            level is null,
        ];
    }
}
