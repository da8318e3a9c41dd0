using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics.Mixed;

/// <summary>Profile limits and likelihood ratio tests against R 4.2.2, lme4 1.1-31 (calls and tolerances in tests/Reference/mixed).</summary>
public sealed class MixedProfileTests
{
    [Theory]
    [InlineData("sleepstudy", "correlated_ml")]
    [InlineData("dyestuff", "ml")]
    public void Profile_limits_agree_with_lme4(string item, string model)
    {
        var formula = ReferenceData.Values("mixed", item, model).GetProperty("formula").GetString()!;
        var profile = MixedModel.ProfileLimits(MixedReference.Design(item, formula), ConfidenceLevel.NinetyFive).GetOrThrow();
        var byName = profile.Parameters.ToDictionary(parameter => parameter.Kind switch
        {
            ProfiledKind.RandomStandardDeviation => $"sd_{parameter.Column}|{parameter.Term}",
            ProfiledKind.RandomCorrelation => $"cor_{parameter.OtherColumn}.{parameter.Column}|{parameter.Term}",
            ProfiledKind.ResidualStandardDeviation => "sigma",
            _ => parameter.Column,
        });
        foreach (var row in ReferenceData.Values("mixed", item, "profile_ci").EnumerateArray())
        {
            var name = row.GetProperty("name").GetString()!;
            var estimate = byName[name].Estimate;

            // lme4 reads its limits off a spline through the profile: 2e-3, or 1e-3 absolute.
            ReferenceData.AssertClose(row.GetProperty("lower95").GetDouble(), estimate.Lower!.Value, 2e-3, 1e-3, name + " lower");
            ReferenceData.AssertClose(row.GetProperty("upper95").GetDouble(), estimate.Upper!.Value, 2e-3, 1e-3, name + " upper");
        }
    }

    [Fact]
    public void A_spread_that_may_be_nothing_has_a_lower_limit_of_nothing()
    {
        // Box and Tiao's second dyestuff data: the estimate itself is 0 (lme4 1.1-31, tests/Reference/mixed/dyestuff2.json).
        var profile = MixedModel.ProfileLimits(MixedReference.Design("dyestuff2", "Yield ~ 1 + (1 | Batch)"), ConfidenceLevel.NinetyFive).GetOrThrow();
        var spread = profile.Parameters.Single(parameter => parameter.Kind == ProfiledKind.RandomStandardDeviation).Estimate;
        Assert.Equal(0, spread.Value);
        Assert.Equal(0, spread.Lower);
        Assert.True(spread.Upper > 0.5);
    }

    [Theory]
    [InlineData("lrt_slope", "Reaction ~ Days + (1 | Subject)")]
    [InlineData("lrt_correlation", "Reaction ~ Days + (Days || Subject)")]
    public void Likelihood_ratio_tests_agree_with_lme4(string block, string smaller)
    {
        var expected = ReferenceData.Values("mixed", "sleepstudy", block);
        var test = MixedModel.Compare(MaximumLikelihood(smaller), MaximumLikelihood("Reaction ~ Days + (Days | Subject)"));
        ReferenceData.AssertClose(expected.GetProperty("chisq").GetDouble(), test.ChiSquared, 1e-5);
        Assert.Equal(expected.GetProperty("df").GetInt32(), test.DegreesOfFreedom);
        ReferenceData.AssertClose(Math.Log(expected.GetProperty("p").GetDouble()), Math.Log(test.PValue), 1e-5);
        Assert.NotEmpty(test.Notes);
    }

    [Fact]
    public void Fits_that_cannot_be_compared_are_a_caller_mistake()
    {
        var small = MaximumLikelihood("Reaction ~ Days + (1 | Subject)");
        var large = MaximumLikelihood("Reaction ~ Days + (Days | Subject)");
        var reml = MixedModel.Fit(MixedReference.Design("sleepstudy", "Reaction ~ Days + (Days | Subject)")).GetOrThrow();
        var other = MixedModel.Fit(MixedReference.Design("oxboys", "height ~ age + (age | Subject)"), new MixedModelOptions { Criterion = MixedCriterion.MaximumLikelihood }).GetOrThrow();
        Assert.Contains("more parameters", Assert.Throws<ArgumentException>(() => MixedModel.Compare(large, small)).Message, StringComparison.Ordinal);
        Assert.Contains("REML", Assert.Throws<ArgumentException>(() => MixedModel.Compare(small, reml)).Message, StringComparison.Ordinal);
        Assert.Contains("same observations", Assert.Throws<ArgumentException>(() => MixedModel.Compare(small, other)).Message, StringComparison.Ordinal);
    }

    private static MixedFit MaximumLikelihood(string formula) =>
        MixedModel.Fit(MixedReference.Design("sleepstudy", formula), new MixedModelOptions { Criterion = MixedCriterion.MaximumLikelihood }).GetOrThrow();
}
