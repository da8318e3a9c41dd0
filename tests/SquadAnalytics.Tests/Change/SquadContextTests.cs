using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Change;

public sealed class SquadContextTests
{
    private static readonly TypicalErrorResult Noise = TypicalError.Fit(WorkedData.EightAthletes, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
    private static readonly SmallestWorthwhileChange Five = SmallestWorthwhileChange.Entered(new Seconds(5));
    private static readonly IntraclassCorrelationResult Reliability = IntraclassCorrelation.Fit(WorkedData.EightAthletes, new IntraclassCorrelationOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();

    [Fact]
    public void A_change_is_shrunken_towards_the_squad_as_in_R()
    {
        // R 4.2.2: omega2 <- var(d) - se^2; w <- omega2 / (omega2 + se^2); w * d + (1 - w) * mean(d); sqrt(w) * se; pnorm(-5, ...).
        var result = ChangeShrinkage.Fit(Changes(WorkedData.EightAthletes), Five).GetOrThrow();
        Assert.Equal(1.3853507, result.Spread.Value, 5e-8);
        var row = result.Rows[6];
        Assert.Equal(-6.9634, row.PlugIn.Value, 5e-5);
        Assert.Equal(1.2932, row.PlugIn.StandardError!.Value, 5e-5);
        Assert.Equal(0.12857245, result.Spread.Value * result.Spread.Value / (result.Spread.Value * result.Spread.Value + 2 * 2.5502713 * 2.5502713), 5e-8);
        // The normal limits and tail of the plug-in: -9.0906, -4.8362 and 0.9355; no interval is shown with it.
        var reach = NormalDistribution.UpperQuantile(0.05) * row.PlugIn.StandardError.Value;
        Assert.Equal([-9.0906, -4.8362, 0.9355], [row.PlugIn.Value - reach, row.PlugIn.Value + reach, NormalDistribution.Cdf((-5 - row.PlugIn.Value) / row.PlugIn.StandardError.Value)], (expected, got) => Math.Abs(expected - got) < 5e-5);
        Assert.Null(row.PlugIn.Interval);
    }

    [Fact]
    public void A_shrunken_change_counts_that_mean_spread_and_noise_are_not_known()
    {
        // R 4.2.2: mean, SD, limits and P(< -5) of athlete 7 by integrate() over p, from 0 to 1, of t distributions with nu + 5 df, nu = 21, B = min(1, 5 se^2 / SS * qf(1 - p, 5, nu)),
        // SS = sum((D - mean(D))^2), mean (1 - B) D + B mean(D), scale^2 (nu + B SS / se^2) / (nu + 5) (1 - B + B / 8) se^2; limits by uniroot().
        var row = ChangeShrinkage.Fit(Changes(WorkedData.EightAthletes), Five).GetOrThrow().Rows[6];
        double[] expected = [-8.890433852, 3.256799818, -14.753861561, -4.344647360, 0.907421796];
        Assert.Equal(expected, [row.Posterior.Value, row.Posterior.StandardError!.Value, row.Posterior.Lower!.Value, row.Posterior.Upper!.Value, row.FasterThanWorthwhile.Value], (wanted, got) => Math.Abs(wanted - got) < 2e-4);
    }

    [Fact]
    public void Athletes_who_change_alike_all_get_the_mean()
    {
        // Hand arithmetic: equal changes of -5 s leave no variance beyond noise.
        var result = ChangeShrinkage.Fit(Changes(WorkedData.Weekly([305, 300], [315, 310], [325, 320], [335, 330], [345, 340], [355, 350])), Five).GetOrThrow();
        Assert.All(result.Rows, row => Assert.Equal(-5, row.Posterior.Value, 1e-9));
        Assert.Contains(result.Notes, note => note.StartsWith("Negative variance component", StringComparison.Ordinal));
        Assert.Equal(Refusal.TooFewAthletes, ChangeShrinkage.Fit(Changes(WorkedData.Weekly([305, 300], [315, 310], [325, 320])), Five).Refusal!.Reason);
    }

    [Fact]
    public void Regression_to_the_mean_is_expected_without_any_training()
    {
        // Hand arithmetic: reliability 0.80 and a baseline 30 s slower than the squad: -6.0 s.
        Assert.Equal(-6, RegressionToTheMean.Expected(new Estimate(0.8, Unit.None, 10, "ICC(C,1)"), new Seconds(30)).Value, 1e-12);
        // R 4.2.2: -(1 - 0.990656) * (367.9 - mean(test1)); d - mean(d) + (1 - 0.990656) * (367.9 - mean(test1)).
        var rows = RegressionToTheMean.Fit(Week(0), Week(3), Reliability).GetOrThrow();
        Assert.Equal(-0.388113, rows[6].Expected.Value, 5e-7);
        Assert.Equal(-6.424387, rows[6].Adjusted.Value, 5e-7);
        Assert.Equal(0, rows.Sum(row => row.Adjusted.Value), 1e-9);
        Assert.Equal(Refusal.TooFewAthletes, RegressionToTheMean.Fit([.. Week(0).Take(7)], Week(3), Reliability).Refusal!.Reason);
    }

    [Fact]
    public void The_number_of_highlights_by_chance_grows_with_the_questions()
    {
        // Hand arithmetic: 0.10 · 20 athletes · 12 weeks = 24.
        Assert.Equal(24, HighlightCount.Expected(20, 12).Value, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => HighlightCount.Expected(0, 3));
    }

    private static IReadOnlyList<Session> Week(int week) => [.. WorkedData.EightAthletes.Where(session => session.Id.EndsWith($"w{week}", StringComparison.Ordinal))];

    private static SquadChangesResult Changes(IReadOnlyList<Session> sessions) => SquadChanges.Fit(sessions, Noise, Five, new SquadChangesOptions
    {
        BaselineUntil = sessions[0].Date,
        Change = new AthleteChangeOptions { BaselineTests = 1, Selection = SelectionOptions.KeepAll },
    }).GetOrThrow();
}
