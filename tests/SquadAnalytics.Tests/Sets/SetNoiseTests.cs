using CsCheck;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class SetNoiseTests
{
    private static readonly SetNoiseOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void The_pooled_set_noise_matches_R()
    {
        // R 4.2.2: summary(lm(log(t) ~ factor(session) + factor(set)))$sigma over the six sessions.
        var noise = SetNoise.Fit(WorkedData.SixSessions, All).GetOrThrow();
        Assert.Equal(0.0106937, noise.LogNoise.Value, 5e-8);
        Assert.Equal(1.075, noise.Noise.Value, 5e-4);
        Assert.Equal(20, noise.DegreesOfFreedom);
    }

    [Fact]
    public void Without_the_first_session_the_noise_matches_R()
    {
        // R 4.2.2: the same without session 1; sigma 0.01150327 on 16 degrees of freedom. Dropping one session is the default.
        var noise = SetNoise.Fit(WorkedData.SixSessions).GetOrThrow();
        Assert.Equal(0.01150327, noise.LogNoise.Value, 5e-9);
        Assert.Equal(16, noise.DegreesOfFreedom);
        Assert.Contains(noise.Noise.Notes, note => note.Contains("familiarisation", StringComparison.Ordinal));
    }

    [Fact]
    public void The_limits_of_the_noise_match_chi_squared_arithmetic()
    {
        // R 4.2.2: 0.0106937 * sqrt(20 / qchisq(c(.95, .05), 20)) = 0.008533, 0.014518.
        var noise = SetNoise.Fit(WorkedData.SixSessions, All).GetOrThrow();
        Assert.Equal(0.0106937 * Math.Sqrt(20 / 31.4104328), noise.LogNoise.Lower!.Value, 1e-8);
        Assert.Equal(0.0106937 * Math.Sqrt(20 / 10.8508114), noise.LogNoise.Upper!.Value, 1e-8);
    }

    [Fact]
    public void Two_sessions_or_identical_ones_refuse_a_noise()
    {
        Assert.Equal("Not enough data for the set noise: needs 3 eligible sessions, has 2 eligible sessions.", SetNoise.Fit([.. WorkedData.SixSessions.Take(2)], All).ToString());
        Assert.Equal(Refusal.ZeroVariance, SetNoise.Fit(WorkedData.Sessions([60, 61, 62], [60, 61, 62], [60, 61, 62]), All).Refusal!.Reason);
    }

    [Fact]
    public void Multiplying_every_time_leaves_the_noise_unchanged() =>
        Gen.Select(Gen.Double[50, 90].Array[5].Array[3, 8], Gen.Double[0.2, 5]).Sample((times, factor) =>
        {
            var before = SetNoise.Fit(WorkedData.Sessions(times), All).GetOrThrow();
            var after = SetNoise.Fit(WorkedData.Sessions([.. times.Select(row => row.Select(time => time * factor).ToArray())]), All).GetOrThrow();
            Assert.Equal(before.LogNoise.Value, after.LogNoise.Value, 1e-9);
        });
}
