using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Mixed;

/// <summary>Degrees of freedom, limits and tests against lmerTest 3.1-3, pbkrtest 0.5.2 and nlme 3.1-162 (R 4.2.2; calls in tests/Reference/mixed).</summary>
public sealed partial class MixedModelTests
{
    [Theory]
    [InlineData("sleepstudy", "correlated_satterthwaite", "correlated_reml")]
    [InlineData("sleepstudy", "intercept_satterthwaite", "random_intercept_reml")]
    [InlineData("sleepstudy_unbalanced", "satterthwaite", "correlated_reml")]
    [InlineData("bodyweight", "satterthwaite", "reml")]
    [InlineData("dyestuff", "satterthwaite", "reml")]
    [InlineData("machines", "satterthwaite", "nested_reml")]
    public void Satterthwaite_tests_agree_with_lmerTest(string item, string block, string model)
    {
        var fit = Reml(item, model, FixedEffectDegreesOfFreedom.Satterthwaite);
        AssertCoefficients(ReferenceData.Values("mixed", item, block), fit, 1e-3);
    }

    [Theory]
    [InlineData("sleepstudy", "correlated_kenward_roger", "correlated_reml")]
    [InlineData("sleepstudy", "intercept_kenward_roger", "random_intercept_reml")]
    [InlineData("sleepstudy_unbalanced", "kenward_roger", "correlated_reml")]
    [InlineData("bodyweight", "kenward_roger", "reml")]
    [InlineData("dyestuff", "kenward_roger", "reml")]
    [InlineData("machines", "kenward_roger", "nested_reml")]
    public void Kenward_Roger_tests_agree_with_pbkrtest(string item, string block, string model)
    {
        var expected = ReferenceData.Values("mixed", item, block);
        var fit = Reml(item, model, FixedEffectDegreesOfFreedom.KenwardRoger);
        AssertCoefficients(expected.GetProperty("coefficients"), fit, 1e-4);
        var covariance = expected.GetProperty("adjusted_vcov");
        for (var i = 0; i < covariance.GetArrayLength(); i++)
        {
            for (var j = 0; j < covariance.GetArrayLength(); j++)
            {
                var scale = Math.Sqrt(covariance[i][i].GetDouble() * covariance[j][j].GetDouble());
                ReferenceData.AssertClose(covariance[i][j].GetDouble(), fit.FixedCovariance[i][j], 1e-4, 1e-5 * scale, $"covariance {i}, {j}");
            }
        }
    }

    [Fact]
    public void Joint_tests_of_the_growth_curves_agree_with_lmerTest()
    {
        // anova(m, type = 3, ddf = "Kenward-Roger"): the slope averaged over the diets, the diets at time 0, and the diets' slopes.
        var expected = ReferenceData.Values("mixed", "bodyweight", "anova_type3").EnumerateArray().ToDictionary(row => row.GetProperty("term").GetString()!);
        var fit = Reml("bodyweight", "reml", FixedEffectDegreesOfFreedom.KenwardRoger);
        IReadOnlyList<IReadOnlyList<double>> time = [[0, 1, 0, 0, 1 / 3.0, 1 / 3.0]];
        IReadOnlyList<IReadOnlyList<double>> diet = [[0, 0, 1, 0, 0, 0], [0, 0, 0, 1, 0, 0]];
        IReadOnlyList<IReadOnlyList<double>> both = [[0, 0, 0, 0, 1, 0], [0, 0, 0, 0, 0, 1]];
        foreach (var (term, rows) in new[] { ("Time", time), ("Diet", diet), ("Time:Diet", both) })
        {
            var test = fit.Test(rows);
            ReferenceData.AssertClose(expected[term].GetProperty("F value").GetDouble(), test.F, 1e-3, 0, "F of " + term);
            ReferenceData.AssertClose(expected[term].GetProperty("DenDF").GetDouble(), test.DenominatorDf!.Value, 1e-3, 0, "df of " + term);
            ReferenceData.AssertClose(expected[term].GetProperty("Pr(>F)").GetDouble(), test.PValue, 1e-3, 0, "p of " + term);
            Assert.Equal(expected[term].GetProperty("NumDF").GetInt32(), test.NumeratorDf);

            // The mean square of the table is F times the residual variance.
            var variance = fit.ResidualStandardDeviation.Value * fit.ResidualStandardDeviation.Value;
            ReferenceData.AssertClose(expected[term].GetProperty("Mean Sq").GetDouble(), test.F * variance, 1e-3, 0, "mean square of " + term);
            ReferenceData.AssertClose(expected[term].GetProperty("Sum Sq").GetDouble(), test.F * variance * test.NumeratorDf, 1e-3, 0, "sum of squares of " + term);
        }
    }

    [Theory]
    [InlineData("sleepstudy", "wald_ci_ml", "correlated_ml")]
    [InlineData("dyestuff", "wald_ci_ml", "ml")]
    public void Wald_limits_agree_with_lme4(string item, string block, string model)
    {
        var formula = ReferenceData.Values("mixed", item, model).GetProperty("formula").GetString()!;
        var options = new MixedModelOptions
        {
            Criterion = MixedCriterion.MaximumLikelihood,
            DegreesOfFreedom = FixedEffectDegreesOfFreedom.Normal,
            ConfidenceLevel = ConfidenceLevel.NinetyFive,
        };
        var fit = MixedModel.Fit(MixedReference.Design(item, formula), options).GetOrThrow();
        foreach (var row in ReferenceData.Values("mixed", item, block).EnumerateArray())
        {
            var estimate = fit.Fixed(row.GetProperty("name").GetString()!).Estimate;
            ReferenceData.AssertClose(row.GetProperty("lower95").GetDouble(), estimate.Lower!.Value, 1e-5);
            ReferenceData.AssertClose(row.GetProperty("upper95").GetDouble(), estimate.Upper!.Value, 1e-5);
        }
    }

    [Theory]
    [InlineData("sleepstudy", "correlated_reml")]
    [InlineData("sleepstudy_unbalanced", "correlated_reml")]
    public void Fit_agrees_with_nlme_which_shares_no_code_with_lme4(string item, string model)
    {
        var expected = ReferenceData.Values("mixed", item, "nlme");
        var fit = Reml(item, model, FixedEffectDegreesOfFreedom.Satterthwaite);
        foreach (var row in expected.GetProperty("fixed").EnumerateArray())
        {
            var estimate = fit.Fixed(row.GetProperty("name").GetString()!).Estimate;
            ReferenceData.AssertClose(row.GetProperty("Value").GetDouble(), estimate.Value, 1e-4);
            ReferenceData.AssertClose(row.GetProperty("Std.Error").GetDouble(), estimate.StandardError!.Value, 1e-4);
            ReferenceData.AssertClose(row.GetProperty("t-value").GetDouble(), estimate.Value / estimate.StandardError.Value, 1e-4);

            // nlme counts residual degrees of freedom, which this library does not: its p is that of our t with its degrees of freedom.
            var p = StudentTDistribution.TwoSidedPValue(estimate.Value / estimate.StandardError.Value, row.GetProperty("DF").GetDouble());
            ReferenceData.AssertClose(Math.Log(row.GetProperty("p-value").GetDouble()), Math.Log(p), 1e-4);
        }

        ReferenceData.AssertClose(expected.GetProperty("sigma").GetDouble(), fit.ResidualStandardDeviation.Value, 1e-4);
        ReferenceData.AssertClose(expected.GetProperty("logLik").GetDouble(), fit.LogLikelihood, 1e-4);
        foreach (var row in expected.GetProperty("varcorr").EnumerateArray())
        {
            var component = fit.VarianceComponents.FirstOrDefault(entry => entry.Column == row.GetProperty("name").GetString());
            var sd = component is null ? fit.ResidualStandardDeviation.Value : component.StandardDeviation.Value;
            ReferenceData.AssertClose(Printed(row, "StdDev")!.Value, sd, 1e-4);
            ReferenceData.AssertClose(Printed(row, "Variance")!.Value, sd * sd, 2e-4);

            // Printed to three decimals, in the row of the slope.
            if (Printed(row, "Corr") is { } correlation) Assert.Equal(correlation, fit.Correlations.Single().Correlation!.Value, 5e-4);
        }
    }

    private static double? Printed(ReferenceValue row, string name) =>
        double.TryParse(row.GetProperty(name).GetString(), System.Globalization.CultureInfo.InvariantCulture, out var number) ? number : null;

    private static MixedFit Reml(string item, string model, FixedEffectDegreesOfFreedom method)
    {
        var formula = ReferenceData.Values("mixed", item, model).GetProperty("formula").GetString()!;
        return MixedModel.Fit(MixedReference.Design(item, formula), new MixedModelOptions { DegreesOfFreedom = method }).GetOrThrow();
    }

    private static void AssertCoefficients(ReferenceValue rows, MixedFit fit, double dfTolerance)
    {
        foreach (var row in rows.EnumerateArray())
        {
            var name = row.GetProperty("name").GetString()!;
            var estimate = fit.Fixed(name).Estimate;
            var df = row.GetProperty("df").GetDouble();
            ReferenceData.AssertClose(row.GetProperty("Estimate").GetDouble(), estimate.Value, 1e-5, 0, name);
            ReferenceData.AssertClose(row.GetProperty("Std. Error").GetDouble(), estimate.StandardError!.Value, 1e-4, 0, "SE of " + name);
            ReferenceData.AssertClose(df, estimate.DegreesOfFreedom!.Value, dfTolerance, 0, "df of " + name);
            ReferenceData.AssertClose(row.GetProperty("t value").GetDouble(), estimate.Value / estimate.StandardError.Value, 1e-4, 0, "t of " + name);

            // A p of 1e-17 magnifies the tolerances of t and df; the error in ln p is what they allow.
            var p = row.GetProperty("Pr(>|t|)").GetDouble();
            ReferenceData.AssertClose(Math.Log(p), Math.Log(estimate.PValue!.Value), 1e-3, 1e-4, "ln p of " + name);
        }
    }
}
