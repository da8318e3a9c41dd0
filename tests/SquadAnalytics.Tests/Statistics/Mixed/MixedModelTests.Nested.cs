using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Mixed;

/// <summary>Sessions within athletes, and crossed factors, on unbalanced made data: R 4.2.2, lme4 1.1-31 with bobyqa and rhoend 1e-10.</summary>
public sealed partial class MixedModelTests
{
    [Fact]
    public void Sessions_within_athletes_with_a_random_slope_agree_with_R()
    {
        // lmer(y ~ set + (1 | athlete:session) + (set | athlete), d), d made by the formula below, every seventh row missing.
        var (y, set, athlete, session) = Nested();
        var fit = MixedModel.Fit(new MixedDesign(y, [DesignColumn.Intercept(206), set], [RandomTerm.Nested("session", athlete, session), RandomTerm.InterceptAndSlope("athlete", athlete, set)])).GetOrThrow();
        ReferenceData.AssertClose(523.59232085, fit.Deviance, 0, 1e-6);
        ReferenceData.AssertClose(58.900549550328, fit.Fixed("intercept").Estimate.Value, 1e-5);
        ReferenceData.AssertClose(0.557021020642, fit.Fixed("set").Estimate.Value, 1e-5);
        ReferenceData.AssertClose(0.483420007637, fit.Fixed("intercept").Estimate.StandardError!.Value, 1e-5);
        ReferenceData.AssertClose(0.149796379215, fit.Fixed("set").Estimate.StandardError!.Value, 1e-5);
        double[] sds = [0.825926610684, 1.309188469761, 0.415248116451];
        for (var k = 0; k < sds.Length; k++) ReferenceData.AssertClose(sds[k], fit.VarianceComponents[k].StandardDeviation.Value, 1e-4);
        ReferenceData.AssertClose(0.182052555495, fit.Correlations.Single().Correlation!.Value, 1e-4, 2e-5);
        ReferenceData.AssertClose(0.593988556915, fit.ResidualStandardDeviation.Value, 1e-5);
        var first = fit.RandomEffects.Single(effect => effect.Term == "session" && effect.Group == "1:1");
        ReferenceData.AssertClose(-1.3376906238426, first.Deviation, 0, 1e-4);
        ReferenceData.AssertClose(0.413769203186, first.ConditionalStandardDeviation, 1e-4);
        var second = fit.RandomEffects.Single(effect => effect.Term == "athlete" && effect.Column == "intercept" && effect.Group == "2");
        ReferenceData.AssertClose(-1.102086536080, second.Deviation, 0, 1e-4);
        ReferenceData.AssertClose(0.376127308994, second.ConditionalStandardDeviation, 1e-4);
    }

    [Fact]
    public void Three_crossed_factors_of_which_one_has_no_variance_agree_with_R()
    {
        // lmer(y ~ set + (1 | athlete) + (1 | session) + (1 | set), d): singular, the variance of set is 0.
        var (y, set, athlete, session) = Nested();
        string[] sets = [.. set.Values.Select(value => $"S{value}")];
        var fit = MixedModel.Fit(
            new MixedDesign(y, [DesignColumn.Intercept(206), set], [RandomTerm.Intercept("athlete", athlete), RandomTerm.Intercept("session", session), RandomTerm.Intercept("set", sets)])).GetOrThrow();
        Assert.True(fit.IsSingular);
        ReferenceData.AssertClose(674.444572487, fit.Deviance, 0, 1e-6);
        ReferenceData.AssertClose(0.551982131812, fit.Fixed("set").Estimate.Value, 1e-5);
        ReferenceData.AssertClose(0.0563917308379, fit.Fixed("set").Estimate.StandardError!.Value, 1e-5);
        ReferenceData.AssertClose(1.6880896274271, fit.VarianceComponents[0].StandardDeviation.Value, 1e-4);

        // The reference's 0.0197 sits on a flat likelihood near 0: the variance is compared in units of the residual variance.
        ReferenceData.AssertClose(0.0196975561305, fit.VarianceComponents[1].StandardDeviation.Value, 0, 2e-3);
        ReferenceData.AssertClose(0, fit.VarianceComponents[2].StandardDeviation.Value, 0, 1e-6);
        ReferenceData.AssertClose(1.1466659778230, fit.ResidualStandardDeviation.Value, 1e-5);
        Assert.Contains(fit.Notes, note => note.Contains("'set'", StringComparison.Ordinal));
    }

    /// <summary>8 athletes, 6 sessions, 5 sets; scatter from h(k), the fraction of 43758.5453 sin(12.9898 k), which is the same in R.</summary>
    private static (DesignColumn Y, DesignColumn Set, string[] Athlete, string[] Session) Nested()
    {
        static double H(int k)
        {
            var x = Math.Sin(k * 12.9898) * 43758.5453;
            return x - Math.Floor(x) - 0.5;
        }

        var rows = (from athlete in Enumerable.Range(1, 8)
                    from session in Enumerable.Range(1, 6)
                    from set in Enumerable.Range(0, 5)
                    let k = (athlete - 1) * 30 + (session - 1) * 5 + set + 1
                    where k % 7 != 3
                    select (Athlete: athlete, Session: session, Set: set, Y: Math.Round(60 + 6 * H(athlete + 1000) + 4 * H(athlete * 10 + session + 2000) + set * (0.5 + 1.5 * H(athlete + 3000)) + 2 * H(k), 3))).ToArray();
        return (
            new DesignColumn("y", [.. rows.Select(row => row.Y)]),
            new DesignColumn("set", [.. rows.Select(row => (double)row.Set)]),
            [.. rows.Select(row => $"{row.Athlete}")],
            [.. rows.Select(row => $"{row.Session}")]);
    }
}
