using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class LocalLevelTests
{
    private static readonly double[] Nile = ReferenceData.Column("monitoring", "nile_control.csv", "y");

    // R 4.2.2: StructTS(Nile, "level")$coef, 1469.14661923768 and 15098.5771535974. It starts from a very wide instead of a diffuse level
    // and stops its search early, hence 1e-4.
    [Fact]
    public void The_variances_of_the_Nile_match_StructTS()
    {
        var got = LocalLevel.Fit([.. Nile.Select(value => (double?)value)]).GetOrThrow();
        ReferenceData.AssertClose(1469.14661923768, got.LevelVariance, 1e-4);
        ReferenceData.AssertClose(15098.5771535974, got.ObservationVariance, 1e-4);
        Assert.False(got.IsBoundary);
    }

    // R 4.2.2: the diffuse likelihood written out and given to optim(method = "BFGS", reltol = 1e-15); filtered levels by the recursion,
    // smoothed ones by solve(diag(n)/e + crossprod(diff(diag(n)))/l) with dense matrices.
    [Fact]
    public void Levels_and_likelihood_of_the_Nile_match_R()
    {
        var got = LocalLevel.Fit([.. Nile.Select(value => (double?)value)]).GetOrThrow();
        ReferenceData.AssertClose(-632.545625103041, got.LogLikelihood, 1e-12);
        ReferenceData.AssertClose(15098.5203419704, got.ObservationVariance, 1e-6);
        ReferenceData.AssertClose(1469.17543883721, got.LevelVariance, 1e-5);
        var points = LocalLevelFilter.MostLikely([.. Nile.Select(value => (double?)value)]).Smooth();
        foreach (var (t, level, error) in new[] { (1, 1140.92791347924, 88.8792055799963), (49, 849.070230399801, 63.4993826390344), (99, 798.367320532871, 63.499382639032) })
        {
            ReferenceData.AssertClose(level, points[t].Filtered, 1e-6);
            ReferenceData.AssertClose(error, points[t].FilteredStandardError, 1e-6);
        }

        foreach (var (t, level, error) in new[] { (0, 1111.66867543481, 63.499382639032), (49, 834.762954667612, 48.2366805834011), (99, 798.367320532871, 63.499382639032) })
        {
            ReferenceData.AssertClose(level, points[t].Smoothed, 1e-6);
            ReferenceData.AssertClose(error, points[t].SmoothedStandardError, 1e-6);
        }
    }

    // R 4.2.2: the same likelihood with times 21-40 and 61-80 missing.
    [Fact]
    public void Missing_times_match_R()
    {
        var got = LocalLevel.Fit([.. Nile.Select((value, t) => t is >= 20 and < 40 or >= 60 and < 80 ? (double?)null : value)]).GetOrThrow();
        Assert.Equal(60, got.Observations);
        ReferenceData.AssertClose(-380.007729121121, got.LogLikelihood, 1e-11);
        ReferenceData.AssertClose(17899.8414640091, got.ObservationVariance, 1e-5);
        ReferenceData.AssertClose(685.820875645457, got.LevelVariance, 1e-4);
    }

    [Fact]
    public void A_series_that_only_scatters_has_a_level_that_stays()
    {
        var got = LocalLevel.Fit([1, -1, 1, -1, 1, -1, 1, -1, 1, -1]).GetOrThrow();
        Assert.True(got.IsBoundary);
        Assert.Equal(0, got.LevelVariance);
        Assert.Equal(0, got.SteadyGain);
    }

    [Fact]
    public void A_random_walk_has_no_noise_of_its_own()
    {
        var got = LocalLevel.Fit([0, 1, 2, 3, 4, 5, 4, 3, 2, 1, 0, -1, -2, -3, -4]).GetOrThrow();
        Assert.Equal(0, got.ObservationVariance);
        Assert.Equal(1, got.SteadyGain);
    }

    // Harvey (1989): λ = (-q + √(q² + 4 q))/2, by hand 0.3903882 at q = 0.25. A long filter settles there.
    [Fact]
    public void The_steady_gain_is_the_root_of_its_equation()
    {
        var got = LocalLevel.Fit([.. Nile.Select(value => (double?)value)]).GetOrThrow();
        var (gain, q) = (got.SteadyGain, got.LevelVariance / got.ObservationVariance);
        Assert.Equal(0, gain * gain + q * gain - q, 1e-12);
        var last = LocalLevelFilter.MostLikely([.. Nile.Select(value => (double?)value)]).Smooth()[^1];
        Assert.Equal(gain * got.ObservationVariance, last.FilteredStandardError * last.FilteredStandardError, 1e-6);
    }

    [Fact]
    public void Too_few_or_equal_observations_are_refused()
    {
        Assert.Equal(Refusal.TooFewObservations, LocalLevel.Fit([1, null, 2, 3]).Refusal!.Reason);
        Assert.Equal(Refusal.ZeroVariance, LocalLevel.Fit([2, 2, 2, 2]).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => LocalLevel.Fit([null, 1, 2, 3, 4]));
    }
}
