using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Sets;

public sealed class RecoveryTests
{
    private static readonly RecoveryParameters Example = new(new Seconds(60), new Seconds(6), new Seconds(60));
    private static readonly Seconds TwoMinutes = new(120);

    [Fact]
    public void The_recursion_on_the_clock_matches_R()
    {
        // R 4.2.2: F <- 0; for (k in 1:5) { t[k] <- 60 + 6 * F; F <- (F + 1) * exp(-(120 - t[k]) / 60) }.
        double[] expected = [60, 62.207277, 63.132430, 63.539689, 63.722724];
        var times = Example.OnTheClock(5, TwoMinutes);
        for (var k = 0; k < 5; k++) Assert.Equal(expected[k], times[k].Value, 5e-7);
        Assert.Equal(312.60212, times.Sum(time => time.Value), 5e-6);
    }

    [Fact]
    public void At_fixed_rest_the_clock_costs_less_than_a_second()
    {
        // R 4.2.2: the same with 60 s of rest after every set.
        double[] expected = [60, 62.207277, 63.019288, 63.318011, 63.427905];
        var times = Example.AtFixedRest(5, new Seconds(60));
        for (var k = 0; k < 5; k++) Assert.Equal(expected[k], times[k].Value, 5e-7);
        Assert.Equal(311.97248, times.Sum(time => time.Value), 5e-6);
        Assert.Equal(0.62964, Example.ClockPenalty(5, TwoMinutes).Value, 5e-6);
    }

    [Fact]
    public void The_feedback_gains_match_R_and_a_numerical_derivative()
    {
        // R 4.2.2: 6 * F[k + 1] / 60.
        double[] expected = [0.036788, 0.052207, 0.058995, 0.062045];
        var gains = Example.FeedbackGains(5, TwoMinutes);
        for (var k = 0; k < 4; k++) Assert.Equal(expected[k], gains[k].Value, 5e-7);
        // The derivative itself: one thousandth of a second less rest after set 1.
        var shorter = 60 + 6 * Math.Exp(-(60 - 0.001) / 60);
        Assert.Equal(expected[0], (shorter - Example.OnTheClock(2, TwoMinutes)[1].Value) / 0.001, 1e-6);
    }

    [Theory]
    [InlineData(60, 116.71)]
    [InlineData(120, 78.99)]
    [InlineData(300, 53.73)]
    [InlineData(600, 46.43)]
    public void The_residual_for_a_time_constant_matches_R(double timeConstant, double residual)
    {
        // R 4.2.2: deviance(lm(t ~ F)) over six sessions for each tau.
        IReadOnlyList<IReadOnlyList<ClockSet>> clocks = [.. WorkedData.SixSessions.Select(session => RollingClock.Run([.. session.TimesSeconds], 5, 120))];
        Assert.Equal(residual, Recovery.At(clocks, timeConstant).ResidualSumOfSquares, 5e-3);
    }

    [Fact]
    public void Planted_parameters_are_found_with_twenty_four_sessions()
    {
        var result = Recovery.Fit(Planted(24, 0.3), new RecoveryOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.True(result.TimeConstant.Interval!.Value.Contains(60));
        Assert.Equal(60, result.Parameters.Fresh.Value, 0.3);
        Assert.Equal(0.63, result.ClockPenalty.Value, 0.3);
        Assert.Equal(0.3, result.Residual.Value, 0.06);
    }

    [Fact]
    public void What_the_sessions_cannot_tell_is_refused()
    {
        var all = new RecoveryOptions { Selection = SelectionOptions.KeepAll };
        Assert.Equal(Refusal.TooFewSessions, Recovery.Fit(WorkedData.SixSessions, all).Refusal!.Reason);
        // Sessions with a late jump, twice over: the residual falls all the way to the longest time constant.
        var jump = WorkedData.Sessions([.. WorkedData.SixSessions.Concat(WorkedData.SixSessions).Select(session => session.TimesSeconds.ToArray())]);
        Assert.Equal(Refusal.WeaklyIdentified, Recovery.Fit(jump, all).Refusal!.Reason);
        var faster = WorkedData.Sessions([.. Enumerable.Range(0, 10).Select(week => new[] { 64.0, 63 + 0.1 * week, 62, 61, 60.5 })]);
        Assert.Equal(Refusal.BoundarySolution, Recovery.Fit(faster, all).Refusal!.Reason);
        var unknown = WorkedData.WithSets(5, null);
        Assert.Equal(Refusal.IntervalUnknown, Recovery.Fit([WorkedData.One([60, 61, 62, 63, 64], protocol: unknown)], all).Refusal!.Reason);
        var over = WorkedData.Sessions([.. Enumerable.Range(0, 12).Select(_ => new[] { 110.0, 121, 118, 119, 118 })]);
        Assert.Equal(Refusal.TooFewSessions, Recovery.Fit(over, all).Refusal!.Reason);
    }

    private static IReadOnlyList<Session> Planted(int sessions, double noise)
    {
        var random = new SeededRandom(3);
        return WorkedData.Sessions([.. Enumerable.Range(0, sessions).Select(_ =>
        {
            var times = new double[5];
            double fatigue = 0;
            for (var k = 0; k < 5; k++)
            {
                times[k] = 60 + 6 * fatigue + noise * random.NextNormal();
                fatigue = (fatigue + 1) * Math.Exp(-(120 - times[k]) / 60);
            }

            return times;
        })]);
    }
}
