using System.Text.Json;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Mixed;

/// <summary>
/// All fits of tests/Reference/mixed: R 4.2.2, lme4 1.1-31 with bobyqa and rhoend 1e-10 (the exact call stands in each file). Tolerances as
/// the files state them: fixed effects, standard errors, residual SD 1e-5; other variance parameters 1e-4 (5e-4 for bodyweight, whose
/// likelihood is flat); predictions 1e-4 residual SDs; deviance 1e-6 absolute.
/// </summary>
public sealed partial class MixedModelTests
{
    private static readonly string[] Items = ["sleepstudy", "sleepstudy_unbalanced", "bodyweight", "oxboys", "dyestuff", "dyestuff2", "generated_singular", "machines"];

    public static TheoryData<string, string> Fits
    {
        get
        {
            var fits = new TheoryData<string, string>();
            foreach (var item in Items)
            {
                foreach (var block in ReferenceData.Load("mixed", item).GetProperty("results").EnumerateObject())
                {
                    if (block.Value.GetProperty("values") is { ValueKind: JsonValueKind.Object } values && values.TryGetProperty("formula", out _)) fits.Add(item, block.Name);
                }
            }

            return fits;
        }
    }

    [Theory]
    [MemberData(nameof(Fits))]
    public void Fit_agrees_with_lme4(string item, string block)
    {
        var expected = ReferenceData.Values("mixed", item, block);
        var fit = Fitted(item, expected);
        var loose = item == "bodyweight" ? 5e-4 : 1e-4;
        var sigma = expected.GetProperty("residual_sd").GetDouble();

        ReferenceData.AssertClose(expected.GetProperty("criterion").GetDouble(), fit.Deviance, 0, 1e-6, "criterion");
        ReferenceData.AssertClose(expected.GetProperty("logLik").GetDouble(), fit.LogLikelihood, 0, 1e-6, "log-likelihood");
        Assert.Equal(expected.GetProperty("parameters").GetInt32(), fit.Parameters);
        Assert.Equal(expected.GetProperty("observations").GetInt32(), fit.Observations);
        Assert.Equal(expected.GetProperty("singular").GetBoolean(), fit.IsSingular);
        ReferenceData.AssertClose(expected.GetProperty("aic").GetDouble(), fit.Aic, 0, 1e-6, "AIC");
        ReferenceData.AssertClose(expected.GetProperty("bic").GetDouble(), fit.Bic, 0, 1e-6, "BIC");
        ReferenceData.AssertClose(sigma, fit.ResidualStandardDeviation.Value, 1e-5, 0, "residual SD");
        ReferenceData.AssertClose(expected.GetProperty("residual_sum_of_squares").GetDouble(), fit.ResidualSumOfSquares, loose, 0, "residual sum of squares");
        foreach (var groups in expected.GetProperty("groups").EnumerateObject())
            Assert.Equal(groups.Value.GetInt32(), fit.RandomEffects.Where(effect => effect.Term == groups.Name).Select(effect => effect.Group).Distinct().Count());
        AssertFixedEffects(expected, fit);
        AssertVarianceComponents(expected, fit, loose);
        AssertPredictions(expected, fit, sigma);
    }

    [Theory]
    [MemberData(nameof(Fits))]
    public void Theta_agrees_with_lme4(string item, string block)
    {
        var expected = ReferenceData.Values("mixed", item, block);
        var fit = Fitted(item, expected);
        var theta = expected.GetProperty("theta");
        var values = theta.ValueKind == JsonValueKind.Array ? theta.EnumerateArray().Select(entry => entry.GetDouble()).ToArray() : [theta.GetDouble()];
        Assert.Equal(values.Length, fit.Theta.Count);
        for (var j = 0; j < values.Length; j++) ReferenceData.AssertClose(values[j], fit.Theta[j], item == "bodyweight" ? 5e-4 : 1e-4, 1e-5, $"theta {j}");
    }

    private static MixedFit Fitted(string item, ReferenceValue expected)
    {
        var options = new MixedModelOptions
        {
            Criterion = expected.GetProperty("reml").GetBoolean() ? MixedCriterion.Reml : MixedCriterion.MaximumLikelihood,
            DegreesOfFreedom = FixedEffectDegreesOfFreedom.Normal,
            SingularFits = SingularFits.Keep,
        };
        return MixedModel.Fit(MixedReference.Design(item, expected.GetProperty("formula").GetString()!), options).GetOrThrow();
    }

    private static void AssertFixedEffects(ReferenceValue expected, MixedFit fit)
    {
        foreach (var row in expected.GetProperty("fixed").EnumerateArray())
        {
            var name = row.GetProperty("name").GetString()!;
            var estimate = fit.Fixed(name).Estimate;
            ReferenceData.AssertClose(row.GetProperty("Estimate").GetDouble(), estimate.Value, 1e-5, 0, name);
            ReferenceData.AssertClose(row.GetProperty("Std. Error").GetDouble(), estimate.StandardError!.Value, 1e-5, 0, "SE of " + name);
            ReferenceData.AssertClose(row.GetProperty("t value").GetDouble(), estimate.Value / estimate.StandardError.Value, 2e-5, 0, "t of " + name);
        }

        var covariance = expected.GetProperty("fixed_vcov");
        for (var i = 0; i < covariance.GetArrayLength(); i++)
        {
            for (var j = 0; j < covariance.GetArrayLength(); j++)
            {
                // A covariance near 0 is known to the precision of the two standard errors it stands between.
                var scale = Math.Sqrt(covariance[i][i].GetDouble() * covariance[j][j].GetDouble());
                ReferenceData.AssertClose(covariance[i][j].GetDouble(), fit.FixedCovariance[i][j], 1e-5, 2e-5 * scale, $"covariance {i}, {j}");
            }
        }
    }

    private static void AssertVarianceComponents(ReferenceValue expected, MixedFit fit, double tolerance)
    {
        foreach (var row in expected.GetProperty("random").EnumerateArray())
        {
            var term = row.GetProperty("grp").GetString()!.Replace(".1", "", StringComparison.Ordinal);
            var value = row.GetProperty("sdcor").GetDouble();
            var variance = row.GetProperty("vcov").GetDouble();
            if (term == "Residual")
            {
                ReferenceData.AssertClose(value, fit.ResidualStandardDeviation.Value, 1e-5, 0, "residual SD");
                ReferenceData.AssertClose(variance, Math.Pow(fit.ResidualStandardDeviation.Value, 2), 2e-5, 0, "residual variance");
                continue;
            }

            var first = row.GetProperty("var1").GetString()!;
            if (row.GetProperty("var2").GetString() is { } second)
            {
                var correlation = fit.Correlations.Single(entry => entry.Term == term && entry.First == first && entry.Second == second).Correlation!.Value;
                ReferenceData.AssertClose(value, correlation, tolerance, 2e-5, "correlation");
                var scale = Deviation(term, first) * Deviation(term, second);
                ReferenceData.AssertClose(variance, correlation * scale, 2 * tolerance, 2e-5 * scale, "covariance");
            }
            else
            {
                ReferenceData.AssertClose(value, Deviation(term, first), tolerance, 0, "SD of " + first);
                ReferenceData.AssertClose(variance, Math.Pow(Deviation(term, first), 2), 2 * tolerance, 0, "variance of " + first);
            }
        }

        double Deviation(string term, string column) => fit.VarianceComponents.Single(entry => entry.Term == term && entry.Column == column).StandardDeviation.Value;
    }

    private static void AssertPredictions(ReferenceValue expected, MixedFit fit, double sigma)
    {
        foreach (var row in expected.GetProperty("blups").EnumerateArray())
        {
            var (term, column, group) = (row.GetProperty("grpvar").GetString(), row.GetProperty("term").GetString(), row.GetProperty("grp").GetString());
            var effect = fit.RandomEffects.Single(entry => entry.Term == term && entry.Column == column && entry.Group == group);
            ReferenceData.AssertClose(row.GetProperty("condval").GetDouble(), effect.Deviation, 0, 1e-4 * sigma, $"effect of {column}, {group}");
            ReferenceData.AssertClose(row.GetProperty("condsd").GetDouble(), effect.ConditionalStandardDeviation, 1e-4, 1e-4 * sigma, $"SD of {column}, {group}");
        }
    }
}
