using CsCheck;
using SquadAnalytics.Load;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Load;

public sealed class LoadAssociationTests
{
    private static readonly LoadAssociationOptions AsTheyStand = new() { Form = LoadAssociationForm.AsTheyStand, Selection = SelectionOptions.KeepAll };

    // One athlete, ten tests; loads of the weeks before and totals.
    private static readonly double[] OwnLoads = [900, 1200, 1100, 1500, 1000, 1300, 800, 1600, 1250, 1150];
    private static readonly double[] OwnTotals = [318, 321.5, 320, 325, 317, 322, 316.5, 324, 323, 319];

    [Fact]
    public void Load_and_totals_as_they_stand_match_R()
    {
        // R 4.2.2: l <- lm(y ~ athlete + x); a <- anova(l); sqrt(a["x", 2] / (a["x", 2] + a["Residuals", 2])); summary(l)$coef["x", ]; tanh(atanh(r) + c(-1, 1) * qnorm(.95) / sqrt(7)).
        var row = LoadAssociation.Fit(LoadedSquad.ThreeAthletes, LoadedSquad.ThreeAthletesDays, AsTheyStand).GetOrThrow().Rows.Single();
        var r = row.Correlation.GetOrThrow();
        Assert.Equal(0.985903, r.Value, 5e-7);
        Assert.Equal(8, r.DegreesOfFreedom);
        Assert.Equal(0.951955205908, r.Lower!.Value, 1e-9);
        Assert.Equal(0.995913784273, r.Upper!.Value, 1e-9);
        ReferenceData.AssertClose(1.69885387633e-07, r.PValue!.Value, 1e-6);
        Assert.Equal(1.763636, row.Slope.GetOrThrow().Value, 5e-7);
        Assert.Equal(0.105822242971, row.Slope.GetOrThrow().StandardError!.Value, 1e-9);
        Assert.Equal(Unit.SecondsPerLoad, row.Slope.GetOrThrow().Unit);
        ReferenceData.AssertClose(1.69885387633e-07, row.AdjustedPValue!.Value, 1e-6);
    }

    [Fact]
    public void Own_trends_are_taken_out_by_default()
    {
        // R 4.2.2: l <- lm(y ~ athlete * week + x); x <- deviance(lm(y ~ athlete * week)) - deviance(l); sqrt(x / (x + deviance(l))); summary(l)$coef["x", ].
        var result = LoadAssociation.Fit(LoadedSquad.ThreeAthletes, LoadedSquad.ThreeAthletesDays, new LoadAssociationOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(LoadAssociationForm.AboutTrends, result.Form);
        Assert.Equal(0.971912455491, result.Rows[0].Correlation.GetOrThrow().Value, 1e-9);
        Assert.Equal(5, result.Rows[0].Correlation.GetOrThrow().DegreesOfFreedom);
        Assert.Equal(1.743902439024, result.Rows[0].Slope.GetOrThrow().Value, 1e-9);
        Assert.Equal(0.188847281308, result.Rows[0].Slope.GetOrThrow().StandardError!.Value, 1e-9);
        ReferenceData.AssertClose(0.000250133567901, result.Rows[0].Correlation.GetOrThrow().PValue!.Value, 1e-8);
    }

    [Fact]
    public void Changes_from_test_to_test_can_be_held_together()
    {
        // R 4.2.2: dx, dy <- diff within athletes; l <- lm(dy ~ athlete + dx); sqrt(SS_x / (SS_x + SS_res)); X <- model.matrix(l); D <- kronecker(diag(3), 2 on the diagonal, -1 beside it);
        // M <- diag(9) - X %*% solve(crossprod(X)) %*% t(X); V <- deviance(l) / sum(diag(M %*% D)) * solve(crossprod(X)) %*% t(X) %*% D %*% X %*% solve(crossprod(X)): SE 0.196469298369, above the plain 0.185900036389.
        var row = LoadAssociation.Fit(LoadedSquad.ThreeAthletes, LoadedSquad.ThreeAthletesDays, AsTheyStand with { Form = LoadAssociationForm.Changes }).GetOrThrow().Rows[0];
        Assert.Equal(0.972929035999, row.Correlation.GetOrThrow().Value, 1e-9);
        Assert.Equal(1.75, row.Slope.GetOrThrow().Value, 1e-9);
        Assert.Equal(0.196469298369, row.Slope.GetOrThrow().StandardError!.Value, 1e-9);
        ReferenceData.AssertClose(0.000296931705848, row.Correlation.GetOrThrow().PValue!.Value, 1e-8);
    }

    [Fact]
    public void Several_windows_are_adjusted_and_say_how_many_they_are()
    {
        var options = AsTheyStand with { Windows = [LoadWindow.WeekBefore, new LoadWindow(8, 14), new LoadWindow(1, 14)] };
        var result = LoadAssociation.Fit(LoadedSquad.ThreeAthletes, LoadedSquad.ThreeAthletesDays, options).GetOrThrow();
        Assert.Equal([0, 3, 3], result.Rows.Select(row => row.TestsWithoutLoad));
        Assert.Contains("3 windows were tried; read the adjusted p-values.", result.Notes);

        // Benjamini and Hochberg by hand: the smallest of three p-values times three.
        double[] p = [.. result.Rows.Select(row => row.Correlation.GetOrThrow().PValue!.Value)];
        Assert.Equal(p.Min(), p[0]);
        ReferenceData.AssertClose(3 * p[0], result.Rows[0].AdjustedPValue!.Value, 1e-12);
        Assert.Equal("load 8 to 14 days before", result.Rows[1].Window.ToString());
    }

    [Fact]
    public void One_athlete_is_looked_at_by_ranks()
    {
        // R 4.2.2: cor.test(x, y, method = "spearman", exact = FALSE): rho 0.951515151515, p 2.27985492e-05; tanh(atanh(rho) + c(-1, 1) * qnorm(.95) * 1.03 / sqrt(7)); median of the pairwise slopes.
        var row = LoadAssociation.OfOneAthlete(LoadedSquad.Tests("1", OwnTotals), LoadedSquad.DaysBefore("1", OwnLoads), AsTheyStand).GetOrThrow().Rows.Single();
        Assert.Equal(0.951515151515, row.Correlation.GetOrThrow().Value, 1e-9);
        ReferenceData.AssertClose(2.27985492e-05, row.Correlation.GetOrThrow().PValue!.Value, 1e-6);
        Assert.Equal(0.835839985203, row.Correlation.GetOrThrow().Lower!.Value, 1e-9);
        Assert.Equal(0.986288718455, row.Correlation.GetOrThrow().Upper!.Value, 1e-9);
        Assert.Equal(0.0116666666667, row.Slope.GetOrThrow().Value, 1e-9);

        // R 4.2.2: the same of resid(lm(x ~ week)) and resid(lm(y ~ week)): 0.915151515152, 0.0116387559809.
        var about = LoadAssociation.OfOneAthlete(LoadedSquad.Tests("1", OwnTotals), LoadedSquad.DaysBefore("1", OwnLoads), new LoadAssociationOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow().Rows.Single();
        Assert.Equal(0.915151515152, about.Correlation.GetOrThrow().Value, 1e-9);
        Assert.Equal(0.0116387559809, about.Slope.GetOrThrow().Value, 1e-9);

        // R 4.2.2: one test less for the trend: 2 * pt(-r * sqrt(7 / (1 - r^2)), 7); tanh(atanh(r) + c(-1, 1) * qnorm(.95) * 1.03 / sqrt(6)).
        ReferenceData.AssertClose(0.000538778980338, about.Correlation.GetOrThrow().PValue!.Value, 1e-8);
        Assert.Equal(0.699687732277, about.Correlation.GetOrThrow().Lower!.Value, 1e-9);

        // R 4.2.2: 11 changes count as n <- 1 + 10 / 1.5: cor(diff(x), diff(y), method = "spearman") = 0.912646089701; 2 * pt(-r * sqrt((n - 2) / (1 - r^2)), n - 2); tanh(atanh(r) - qnorm(.95) * 1.03 / sqrt(n - 3)).
        var changes = LoadAssociation.OfOneAthlete(LoadedSquad.Tests("1", [.. OwnTotals, 321, 320]), LoadedSquad.DaysBefore("1", [.. OwnLoads, 1400, 950]), AsTheyStand with { Form = LoadAssociationForm.Changes }).GetOrThrow().Rows.Single();
        Assert.Equal(0.912646089701, changes.Correlation.GetOrThrow().Value, 1e-9);
        ReferenceData.AssertClose(0.0021544157321, changes.Correlation.GetOrThrow().PValue!.Value, 1e-8);
        Assert.Equal(0.640414260818, changes.Correlation.GetOrThrow().Lower!.Value, 1e-9);
    }

    [Fact]
    public void Ten_pairs_of_a_middling_correlation_could_be_anything()
    {
        // R 4.2.2: tanh(atanh(.5) + c(-1, 1) * qnorm(.975) / sqrt(7)) = -0.189183870684, 0.859153485209: the limits that the note names.
        var limits = PearsonCorrelation.FisherInterval(0.5, 7, ConfidenceLevel.NinetyFive)!.Value;
        Assert.Equal(-0.189183870684, limits.Lower, 1e-9);
        Assert.Equal(0.859153485209, limits.Upper, 1e-9);
        Assert.Contains(LoadAssociation.Fit(LoadedSquad.ThreeAthletes, LoadedSquad.ThreeAthletesDays, AsTheyStand).GetOrThrow().Notes, note => note.Contains("−0.19 to 0.86", StringComparison.Ordinal));
    }

    [Fact]
    public void Too_few_tests_with_known_load_are_refused_in_their_row()
    {
        var nine = LoadAssociation.OfOneAthlete(LoadedSquad.Tests("1", OwnTotals), LoadedSquad.DaysBefore("1", OwnLoads[..9]), AsTheyStand).GetOrThrow().Rows.Single();
        Assert.Equal("Not enough data for the association of load and total: needs 10 tests with known load, has 9 tests with known load.", nine.Correlation.ToString());
        Assert.Null(nine.AdjustedPValue);
        var none = LoadAssociation.Fit(LoadedSquad.ThreeAthletes, [], AsTheyStand).GetOrThrow().Rows.Single();
        Assert.Equal(Refusal.TooFewObservations, none.Correlation.Refusal!.Reason);
        Assert.Equal(12, none.TestsWithoutLoad);
        Assert.Throws<ArgumentException>(() => LoadAssociation.OfOneAthlete(LoadedSquad.ThreeAthletes, [], AsTheyStand));
        Assert.Throws<ArgumentException>(() => new LoadAssociationOptions { Windows = [] });
        Assert.Throws<ArgumentOutOfRangeException>(() => new LoadWindow(0, 7));
    }

    [Fact]
    public void Own_levels_and_the_order_of_tests_do_not_matter() =>
        Gen.Select(Gen.Double[-50, 50], Gen.Shuffle(LoadedSquad.ThreeAthletes.ToArray())).Sample((shift, shuffled) =>
        {
            var plain = LoadAssociation.Fit(LoadedSquad.ThreeAthletes, LoadedSquad.ThreeAthletesDays, AsTheyStand).GetOrThrow().Rows[0];
            var moved = LoadAssociation.Fit([.. shuffled.Select(session => session.AthleteId == "2" ? WorkedData.Total(session.Total.GetOrThrow().Value + shift, (session.Date.DayNumber - LoadedSquad.FirstTest.DayNumber) / 7, "2") : session)], LoadedSquad.ThreeAthletesDays, AsTheyStand).GetOrThrow().Rows[0];
            Assert.Equal(plain.Correlation.GetOrThrow().Value, moved.Correlation.GetOrThrow().Value, 1e-9);
            Assert.Equal(plain.Slope.GetOrThrow().Value, moved.Slope.GetOrThrow().Value, 1e-9);
        }, iter: 50);
}
