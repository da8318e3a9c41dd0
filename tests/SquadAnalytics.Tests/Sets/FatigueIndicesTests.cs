using CsCheck;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class FatigueIndicesTests
{
    [Fact]
    public void The_indices_of_a_session_match_R()
    {
        // R 4.2.2: x <- c(62.4, 63.1, 64.0, 69.2, 70.3); 100 * (max(x) - min(x)) / min(x); x[5] / x[1]; 100 * (sum(x) / (5 * min(x)) - 1)
        var indices = FatigueIndices.Summarize(WorkedData.FirstSession).GetOrThrow();
        Assert.Equal(12.66026, indices.Extremes.Value, 5e-6);
        Assert.Equal(12.66026, indices.FirstToLast.Value, 5e-6);
        Assert.Equal(1.126603, indices.LastToFirstRatio.Value, 5e-7);
        Assert.Equal(5.448718, indices.Decrement.Value, 5e-7);
        Assert.Equal(329, indices.Total.Value, 1e-9);
        Assert.Null(indices.DecrementExceedsScatter);
        Assert.Contains(indices.Decrement.Notes, note => note.Contains("1.16 times the set noise", StringComparison.Ordinal));
        Assert.Contains(indices.Extremes.Notes, note => note.Contains("2.33 times the set noise", StringComparison.Ordinal));
    }

    [Fact]
    public void The_spread_of_the_indices_over_six_sessions_matches_R()
    {
        // R 4.2.2: 100 * sd(v) / mean(v) of the six totals, decrements and indices from the extremes.
        var all = WorkedData.SixSessions.Select(session => FatigueIndices.Summarize(session).GetOrThrow()).ToList();
        double Variation(Func<FatigueIndicesResult, Estimate> index)
        {
            double[] values = [.. all.Select(result => index(result).Value)];
            var mean = values.Average();
            return 100 * Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1)) / mean;
        }

        Assert.Equal(0.915, Variation(result => result.Total), 5e-4);
        Assert.Equal(9.76, Variation(result => result.Decrement), 5e-3);
        Assert.Equal(5.99, Variation(result => result.Extremes), 5e-3);
    }

    [Fact]
    public void Even_sets_have_no_decrement()
    {
        // Hand arithmetic.
        var indices = FatigueIndices.Summarize(WorkedData.One([60, 60, 60, 60, 60])).GetOrThrow();
        Assert.Equal(0, indices.Decrement.Value, 1e-12);
        Assert.Equal(0, indices.Extremes.Value, 1e-12);
        Assert.Equal(1, indices.LastToFirstRatio.Value, 1e-12);
    }

    [Fact]
    public void A_missing_set_or_too_few_sets_refuse_the_indices()
    {
        var incomplete = new Session("s", "a1", new DateOnly(2031, 1, 7), WorkedData.Circuit, [new SetTime(1, new Seconds(62))]);
        Assert.Equal("Not enough data for the fatigue indices: needs 5 timed sets, has 1 timed sets.", FatigueIndices.Summarize(incomplete).ToString());
        Assert.Equal(Refusal.TooFewSets, FatigueIndices.Summarize(WorkedData.One([60, 61])).Refusal!.Reason);
    }

    [Fact]
    public void A_decrement_inside_the_noise_floor_is_not_called_slowing()
    {
        var floor = NoiseFloor.Simulate(5, 0.02);
        var even = WorkedData.One([60.9, 59.4, 60.2, 61.0, 60.5]);
        var slowing = WorkedData.FirstSession;
        Assert.False(FatigueIndices.Summarize(even, new FatigueOptions { NoiseFloor = floor }).GetOrThrow().DecrementExceedsScatter);
        var result = FatigueIndices.Summarize(slowing, new FatigueOptions { NoiseFloor = floor }).GetOrThrow();
        Assert.True(result.DecrementExceedsScatter);
        Assert.Contains(result.Decrement.Notes, note => note.Contains("in 1 of 20 sessions", StringComparison.Ordinal));
    }

    [Fact]
    public void A_noise_floor_of_another_number_of_sets_is_a_mistake_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => FatigueIndices.Summarize(WorkedData.FirstSession, new FatigueOptions { NoiseFloor = NoiseFloor.Simulate(6, 0.02) }));

    [Fact]
    public void Multiplying_every_set_by_a_factor_leaves_the_indices_unchanged() =>
        Gen.Select(Gen.Double[40, 120].Array[3, 12], Gen.Double[0.2, 5]).Sample((times, factor) =>
        {
            var before = FatigueIndices.Summarize(WorkedData.One(times)).GetOrThrow();
            var after = FatigueIndices.Summarize(WorkedData.One([.. times.Select(time => time * factor)])).GetOrThrow();
            Assert.Equal(before.Decrement.Value, after.Decrement.Value, 1e-9);
            Assert.Equal(before.Extremes.Value, after.Extremes.Value, 1e-9);
            Assert.Equal(before.FirstToLast.Value, after.FirstToLast.Value, 1e-9);
            Assert.True(before.Decrement.Value >= 0);
        });
}
