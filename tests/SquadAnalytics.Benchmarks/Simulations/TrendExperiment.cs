using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>One boxer's season: coverage of the trend's intervals, false alarms of trend and chart.</summary>
/// <param name="sessions">Weekly sessions.</param>
/// <param name="noisePercent">Set noise.</param>
/// <param name="percentPerWeek">The true trend, in percent of the first total per week.</param>
internal sealed class TrendExperiment(int sessions, double noisePercent, double percentPerWeek) : Experiment
{
    private readonly VirtualBoxer _boxer = new() { SetNoisePercent = noisePercent, DriftPercentPerSet = 0.6 };

    public override string Setting => string.Create(CultureInfo.InvariantCulture, $"season, {sessions} sessions, set noise {noisePercent} %, trend {percentPerWeek} % per week");

    public override IReadOnlyList<Question> Questions =>
    [
        Interval("slope"),
        Interval("slope in percent"),
        Interval("Newey-West slope"),
        // Ranks of a few tests cannot hit a level; the result states the confidence that its limits really have.
        IntervalAsStated("Theil-Sen slope"),
        Interval("scatter about the line"),
        Interval("own typical error"),
        percentPerWeek == 0 ? new($"{Level} interval of the slope leaves out 0", Promise.Exactly, 1 - Level.Fraction) : new($"{Level} interval of the slope leaves out 0"),
    ];

    public override IReadOnlyList<Reply> Trial(SeededRandom random)
    {
        var tests = _boxer.Sessions(random, sessions, session => 1 + (percentPerWeek * session / 100));
        SeasonTrend.Fit(tests, new SeasonTrendOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var trend);
        TypicalError.OfOneAthlete(tests, new TypicalErrorOptions { Level = Level, Selection = SelectionOptions.KeepAll }).TryGet(out var own);
        double[] weeks = [.. Enumerable.Range(0, sessions).Select(week => (double)week)];
        double[] totals = [.. weeks.Select(week => VirtualSquad.Total(_boxer) * (1 + (percentPerWeek * week / 100)))];
        var slope = totals[1] - totals[0];
        var relative = LeastSquares.FitLine(weeks, [.. totals.Select(total => Math.Log(total))]).GetOrThrow().Coefficient("slope").Value;
        var scatter = totals.Average() * VirtualSquad.NoisePercent(_boxer) / 100;
        return
        [
            Covers(trend?.Slope, slope),
            Covers(trend?.RelativeSlope, Percent.FromLog(relative).Value),
            Covers(trend?.SerialSlope, slope),
            new(Covers(trend is not null && trend.RobustSlope.TryGet(out var robust) ? robust : null, slope), Achieved(trend)),
            Covers(trend?.ResidualStandardDeviation, scatter),
            Covers(own?.Estimate, scatter),
            trend is null ? null : Covers(trend.Slope, 0) == false,
        ];
    }

    private double? Achieved(SeasonTrendResult? trend) => trend is null ? null
        : TheilSen.Fit([.. trend.Points.Select(point => point.Week)], [.. trend.Points.Select(point => point.TotalSeconds)], Level).GetOrThrow().AchievedConfidence;
}
