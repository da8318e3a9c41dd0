using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class NoiseFloorTests
{
    [Fact]
    public void Even_pacing_with_two_percent_noise_gives_the_indices_simulated_in_R()
    {
        // R 4.2.2: x <- exp(matrix(rnorm(5e5, 0, 0.02), ncol = 5)); mean and quantile(, .95) of 100 * (rowMeans(x) / min - 1), 100 * (max / min - 1),
        // 100 * (x[, 5] / x[, 1] - 1). Tolerance: Monte Carlo error of 20 000 runs.
        var floor = NoiseFloor.Simulate(5, 0.02, new NoiseFloorOptions { Seed = 7 });
        Assert.Equal(2.38, floor.DecrementExpected.Value, 0.03);
        Assert.Equal(4.29, floor.DecrementLimit.Value, 0.08);
        Assert.Equal(4.78, floor.ExtremesExpected.Value, 0.05);
        Assert.Equal(8.02, floor.ExtremesLimit.Value, 0.12);
        Assert.Equal(0.04, floor.FirstToLastExpected.Value, 0.08);
        Assert.Equal(4.77, floor.FirstToLastLimit.Value, 0.12);
    }

    [Theory]
    [InlineData(0.005)]
    [InlineData(0.01)]
    [InlineData(0.03)]
    public void The_limit_for_five_sets_follows_the_curve_fitted_in_R(double noise)
    {
        // R 4.2.2: 95th percentile of the simulated decrement against the noise in percent, about 2.08 s + 0.0315 s^2.
        var percent = 100 * noise;
        var curve = 2.08 * percent + 0.0315 * percent * percent;
        ReferenceData.AssertClose(curve, NoiseFloor.Simulate(5, noise, new NoiseFloorOptions { Runs = 40_000 }).DecrementLimit.Value, 0.02);
    }

    [Theory]
    [InlineData(2, 0.5641895835)]
    [InlineData(3, 0.8462843753)]
    [InlineData(5, 1.1629644736)]
    public void The_expected_extreme_of_normals_matches_its_known_values(int sets, double expected) =>
        // 1/√π, 3/(2√π) and, for 5, Harter 1961, Biometrika 48:151-165 (from memory).
        Assert.Equal(expected, NoiseFloor.ExpectedExtreme(sets), 1e-9);

    [Fact]
    public void The_same_seed_gives_the_same_floor() =>
        Assert.Equal(NoiseFloor.Simulate(6, 0.02).DecrementLimit, NoiseFloor.Simulate(6, 0.02).DecrementLimit);

    [Fact]
    public void Too_few_runs_are_a_mistake_of_the_caller() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new NoiseFloorOptions { Runs = 10 });
}
