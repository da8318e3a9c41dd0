using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class RobustCovarianceTests
{
    private static readonly double[] WeeklyTotals =
        [331.0, 330.2, 330.4, 329.1, 328.0, 328.3, 327.6, 327.9, 323.9, 323.1, 321.4, 322.0, 321.3, 319.6, 318.4, 318.9];

    // R 4.2.2: sqrt(diag(B X'diag(w)X B)) of lm(dist ~ speed) on datasets::cars, B = solve(X'X).
    [Theory]
    [InlineData(SandwichCorrection.HC0)]
    [InlineData(SandwichCorrection.HC1)]
    [InlineData(SandwichCorrection.HC2)]
    [InlineData(SandwichCorrection.HC3)]
    public void Sandwich_standard_errors_match_R(SandwichCorrection correction)
    {
        var fit = LeastSquares.FitLine(ReferenceData.Column("regression", "cars_quadratic.csv", "speed"), ReferenceData.Column("regression", "cars_quadratic.csv", "dist")).GetOrThrow();
        var expected = ReferenceData.Values("regression", "cars_quadratic", "robust_se").Numbers($"hc{(int)correction}");
        foreach (var (error, got) in expected.Zip(RobustCovariance.Sandwich(fit, correction).GetOrThrow().StandardErrors))
            ReferenceData.AssertClose(error, got, 1e-9, what: correction.ToString());
    }

    // R 4.2.2: M = Σ e_t² x x' + Σ_l (1 - l/3) Σ_t e_t e_(t-l) (x x' + x x'), l = 1, 2; sqrt(diag(B M B) n/(n - p)).
    [Fact]
    public void Newey_West_standard_errors_match_R()
    {
        double[] expected = [0.193704093916751, 0.0587384192650539, 0.362979248092799, 0.0859296340327019];
        foreach (var (error, got) in expected.Zip(RobustCovariance.NeweyWest(Interrupted(), lag: 2).StandardErrors))
            ReferenceData.AssertClose(error, got, 1e-9);
    }

    // R 4.2.2: sum(diff(e)^2)/sum(e^2) and sum(e[-1] * e[-n])/sum(e^2) of the same lm.
    [Fact]
    public void Durbin_Watson_and_lag_1_of_the_residuals_match_R()
    {
        ReferenceData.AssertClose(2.24022661116156, SerialCorrelation.DurbinWatson(Interrupted().Residuals)!.Value, 1e-9);
        ReferenceData.AssertClose(-0.159624192723831, SerialCorrelation.Lag1(Interrupted().Residuals)!.Value, 1e-9);
    }

    [Fact]
    public void Newey_West_without_lags_is_the_sandwich_HC1()
    {
        var newey = RobustCovariance.NeweyWest(Interrupted(), lag: 0).StandardErrors;
        foreach (var (error, got) in RobustCovariance.Sandwich(Interrupted(), SandwichCorrection.HC1).GetOrThrow().StandardErrors.Zip(newey)) Assert.Equal(error, got, 1e-12);
    }

    [Fact]
    public void HC3_refuses_where_one_observation_decides_its_own_fit()
    {
        var fit = LeastSquares.Fit([1, 2, 4, 9], RegressionDesign.WithIntercept(4).Add("only the last", [0, 0, 0, 1])).GetOrThrow();
        Assert.Equal(Refusal.WeaklyIdentified, RobustCovariance.Sandwich(fit).Refusal!.Reason);
        Assert.Null(fit.Diagnostics()[3].StandardizedResidual);
        Assert.True(RobustCovariance.Sandwich(fit, SandwichCorrection.HC1).IsEstimated);
    }

    [Fact]
    public void Residuals_that_are_all_0_have_no_serial_correlation() => Assert.Null(SerialCorrelation.DurbinWatson([0, 0, 0]));

    private static LinearFit Interrupted()
    {
        var t = Enumerable.Range(0, 16).Select(week => (double)week).ToArray();
        var design = RegressionDesign.WithIntercept(16).Add("week", t)
            .Add("level change", [.. t.Select(week => week >= 8 ? 1.0 : 0)])
            .Add("slope change", [.. t.Select(week => Math.Max(0, week - 8))]);
        return LeastSquares.Fit(WeeklyTotals, design).GetOrThrow();
    }
}
