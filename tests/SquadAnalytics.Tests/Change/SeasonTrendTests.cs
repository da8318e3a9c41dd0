using CsCheck;
using SquadAnalytics.Change;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Change;

public sealed class SeasonTrendTests
{
    private static readonly SeasonTrendOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void The_slope_is_that_of_least_squares_on_true_weeks()
    {
        // R 4.2.2: fit <- lm(y ~ w); confint(fit, level = .9); summary(fit)$sigma; e <- resid(fit); sum(e[-1] * e[-10]) / sum(e^2); 100 * expm1(confint(lm(log(y) ~ w), level = .9)).
        var trend = SeasonTrend.Fit(SeasonData.Season, All).GetOrThrow();
        Assert.Equal(-0.94419643, trend.Slope.Value, 5e-9);
        Assert.Equal(0.10106148, trend.Slope.StandardError!.Value, 5e-9);
        Assert.Equal(-1.1321251, trend.Slope.Lower!.Value, 5e-8);
        Assert.Equal(-0.7562677, trend.Slope.Upper!.Value, 5e-8);
        Assert.Equal(Unit.SecondsPerWeek, trend.Slope.Unit);
        Assert.Equal(1.171616, trend.ResidualStandardDeviation.Value, 5e-7);
        Assert.Equal(-0.486338, trend.SerialCorrelation.GetOrThrow().Value, 5e-7);
        Assert.Equal(-0.289589, trend.RelativeSlope.Value, 5e-7);
        Assert.Equal(-0.347143, trend.RelativeSlope.Lower!.Value, 5e-7);
        Assert.Equal(-0.232002, trend.RelativeSlope.Upper!.Value, 5e-7);
        Assert.Contains(trend.Notes, note => note.Contains("too wide", StringComparison.Ordinal));
    }

    [Fact]
    public void The_robust_slope_stands_beside_it()
    {
        // R 4.2.2: slopes <- outer(y, y, "-") / outer(w, w, "-"), median of the lower triangle; C <- qnorm(.95) * sqrt(10 * 9 * 25 / 18); sorted at round((45 - C) / 2) and round((45 + C) / 2) + 1; cor.test(w, y, method = "kendall", exact = TRUE).
        var robust = SeasonTrend.Fit(SeasonData.Season, All).GetOrThrow().RobustSlope.GetOrThrow();
        Assert.Equal(-0.92, robust.Value, 1e-9);
        Assert.Equal(-1.171429, robust.Lower!.Value, 5e-7);
        Assert.Equal(-0.80, robust.Upper!.Value, 1e-9);
        Assert.Equal(0.000357694, robust.PValue!.Value, 5e-10);

        // R 4.2.2: the number of inversions of 10 values by its recursion lies from 13 to 32 with probability 0.927449845679.
        Assert.Contains(robust.Notes, note => note.StartsWith("The interval's confidence is 92.7 %", StringComparison.Ordinal));
        Assert.Equal(0.927449845679, TheilSen.Fit([0, 1, 2, 3, 5, 6, 7, 9, 10, 11], SeasonData.Totals, ConfidenceLevel.Ninety).GetOrThrow().AchievedConfidence!.Value, 1e-11);
    }

    [Fact]
    public void Equal_totals_do_not_hide_the_confidence_of_ranks()
    {
        // The same inversions as without equal totals: pairwise slopes about the true slope do not tie.
        var tied = TheilSen.Fit([0, 1, 2, 3, 5, 6, 7, 9, 10, 11], [.. SeasonData.Totals.Select((total, i) => i == 4 ? SeasonData.Totals[3] : total)], ConfidenceLevel.Ninety).GetOrThrow();
        Assert.Null(tied.Kendall.ExactPValue);
        Assert.Equal(0.927449845679, tied.AchievedConfidence!.Value, 1e-11);
        Assert.Null(TheilSen.Fit([0, 1, 2, 3, 5, 5, 7, 9, 10, 11], SeasonData.Totals, ConfidenceLevel.Ninety).GetOrThrow().AchievedConfidence);
    }

    [Fact]
    public void Limits_that_allow_for_neighbours_hold_in_a_short_series()
    {
        // R 4.2.2, with X = cbind(1, w), a the second row of solve(X'X) X', W the Bartlett weights to lag 2, A = n/(n-2) diag(a) W diag(a), M = I - X solve(X'X) X', B = M A M:
        // se = sqrt(e'Ae), inflation sqrt(sum(a^2) / tr(B)), df tr(B)^2 / sum(B * B), coef(lm(y ~ w))[2] + c(-1, 1) * qt(.95, df) * inflation * se.
        var serial = SeasonTrend.Fit(SeasonData.Season, All).GetOrThrow().SerialSlope;
        double[] expected = [0.05248711783, 3.87906930246, -1.09632424963, -0.79206860752];
        Assert.Equal(expected, [serial.StandardError!.Value, serial.DegreesOfFreedom!.Value, serial.Lower!.Value, serial.Upper!.Value], (wanted, got) => Math.Abs(wanted - got) < 5e-9);
    }

    [Fact]
    public void Neighbouring_tests_are_allowed_for_beside_the_plain_interval()
    {
        // Hand arithmetic of the Newey-West estimator with lag 0: the sandwich with squared residuals times m / (m - 2).
        var trend = SeasonTrend.Fit(SeasonData.Season, All with { NeweyWestLag = 0 }).GetOrThrow();
        var mean = trend.Points.Average(point => point.Week);
        var meat = trend.Points.Sum(point => Math.Pow((point.Week - mean) * point.ResidualSeconds, 2));
        var sum = trend.Points.Sum(point => Math.Pow(point.Week - mean, 2));
        Assert.Equal(Math.Sqrt(10.0 / 8 * meat) / sum, trend.SerialSlope.StandardError!.Value, 1e-9);
        Assert.Equal(trend.Slope.Value, trend.SerialSlope.Value);
    }

    [Fact]
    public void Thin_seasons_are_refused()
    {
        Assert.Equal("Not enough data for the season trend: needs 5 eligible sessions over 4 weeks, has 4 eligible sessions over 3 weeks.", SeasonTrend.Fit([.. SeasonData.Season.Take(4)], All).ToString());
        var crowded = WorkedData.Total(330, 0) with { Id = "second", Occasion = 2 };
        Assert.Equal(Refusal.TooFewSessions, SeasonTrend.Fit([.. SeasonData.Season.Take(4), crowded], All).Refusal!.Reason);
        Assert.Equal(Refusal.TooFewSessions, SeasonTrend.Fit([.. SeasonData.Season.Take(7)], All).GetOrThrow().RobustSlope.Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => SeasonTrend.Fit([.. SeasonData.Season, WorkedData.Total(300, 3, "B2")], All));
        Assert.Equal(9, SeasonTrend.Fit(SeasonData.Season).GetOrThrow().Points.Count);
    }

    [Fact]
    public void A_shift_leaves_the_slope_alone_and_a_scale_carries_over() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Double[0.5, 2]).Sample((shift, scale) =>
        {
            var plain = SeasonTrend.Fit(SeasonData.Season, All).GetOrThrow();
            var moved = SeasonTrend.Fit(SeasonData.Changed(SeasonData.Season, total => total + shift), All).GetOrThrow();
            var scaled = SeasonTrend.Fit(SeasonData.Changed(SeasonData.Season, total => total * scale), All).GetOrThrow();
            Assert.Equal(plain.Slope.Value, moved.Slope.Value, 1e-9);
            Assert.Equal(scale * plain.Slope.Lower!.Value, scaled.Slope.Lower!.Value, 1e-9);
            Assert.Equal(plain.RelativeSlope.Value, scaled.RelativeSlope.Value, 1e-9);
        });

    [Fact]
    public void The_order_in_which_sessions_are_given_does_not_matter()
    {
        var plain = SeasonTrend.Fit(SeasonData.Season, All).GetOrThrow();
        Assert.Equal(plain.Slope.Value, SeasonTrend.Fit([.. SeasonData.Season.Reverse()], All).GetOrThrow().Slope.Value);
    }
}
