using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Sets;

public sealed class StartingTooFastTests
{
    private static readonly StartingTooFastOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void Faster_starts_that_cost_later_sets_are_found()
    {
        // By construction: the later sets lose half a percent for each percent gained in the first set.
        var result = StartingTooFast.Fit(Planted(-0.5, 0.04, 0.005, 16), All).GetOrThrow();
        Assert.True(result.FasterStartsCostLater);
        Assert.True(result.Slope.Interval!.Value.Contains(-0.5));
        Assert.Equal(13, result.Slope.DegreesOfFreedom);
    }

    [Fact]
    public void Two_lines_of_hand_made_logarithms_give_the_planted_slope_exactly()
    {
        // Hand arithmetic: z = -0.5 x - 0.01 week without noise, so the slope is -0.5 whatever the dates. Each session's later sets carry fixed offsets, so the set noise is not 0.
        double[] x = [0.05, -0.04, 0.02, -0.05, 0.04, -0.02, 0.03, -0.03, 0.01];
        var sessions = WorkedData.Sessions([.. x.Select((start, week) => Times(start, -0.5 * start - 0.01 * week, week % 2 == 0 ? 0.002 : -0.002))]);
        Assert.Equal(-0.5, StartingTooFast.Fit(sessions, All).GetOrThrow().Slope.Value, 1e-9);
    }

    [Fact]
    public void Few_sessions_or_starts_within_the_noise_are_refused()
    {
        Assert.Equal(Refusal.TooFewSessions, StartingTooFast.Fit(Planted(-0.5, 0.04, 0.005, 7), All).Refusal!.Reason);
        // First sets within 0.1 % of each other, later sets with noise of 2 %.
        var steady = WorkedData.Sessions([.. Enumerable.Range(0, 9).Select(week => Times(0.0001 * week, 0.001 * week, week % 2 == 0 ? 0.02 : -0.02))]);
        Assert.Equal(Refusal.ZeroVariance, StartingTooFast.Fit(steady, All).Refusal!.Reason);
        Assert.Throws<ArgumentOutOfRangeException>(() => StartingTooFast.Fit(Planted(-0.5, 0.04, 0.005, 9), All with { AfterSet = 5 }));
    }

    private static IReadOnlyList<Session> Planted(double slope, double startSpread, double noise, int sessions)
    {
        var random = new SeededRandom(5);
        return WorkedData.Sessions([.. Enumerable.Range(0, sessions).Select(_ =>
        {
            var start = startSpread * random.NextNormal();
            return Enumerable.Range(0, 5).Select(k => 60 * Math.Exp((k == 0 ? start : 0.02 * k + slope * start) + noise * random.NextNormal())).ToArray();
        })]);
    }

    private static double[] Times(double start, double later, double offset) =>
        [60 * Math.Exp(start), 60 * Math.Exp(later + offset), 60 * Math.Exp(later - offset), 60 * Math.Exp(later + offset), 60 * Math.Exp(later - offset)];
}
