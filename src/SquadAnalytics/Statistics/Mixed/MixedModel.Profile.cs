namespace SquadAnalytics.Statistics;

public static partial class MixedModel
{
    /// <summary>Profile likelihood limits of fixed effects, standard deviations and correlations.</summary>
    /// <remarks>
    /// The limits of a parameter are the values at which the deviance, minimised over all other parameters, exceeds its minimum by the χ²₁ quantile. By
    /// maximum likelihood, whatever the fit they are shown with. They respect the edges: a standard deviation's lower limit may be 0, a correlation's
    /// limits ±1. Source: Bates et al. (2015), J Stat Softw 67(1) (from memory).
    /// </remarks>
    /// <param name="design">Response, fixed effects and random terms.</param>
    /// <param name="level">Level of the limits.</param>
    /// <returns>The limits, or <see cref="NotEstimable"/> as for <see cref="Fit"/>, with <see cref="Refusal.NotConverged"/> where a profile does not settle.</returns>
    public static Answer<MixedProfile> ProfileLimits(MixedDesign design, ConfidenceLevel level)
    {
        var options = new MixedModelOptions { Criterion = MixedCriterion.MaximumLikelihood, DegreesOfFreedom = FixedEffectDegreesOfFreedom.Normal, ConfidenceLevel = level };
        return Fit(design, options).Match<Answer<MixedProfile>>(
            fit =>
            {
                try
                {
                    var profiler = new MixedProfiler(fit, level);
                    return new MixedProfile(fit.Design, [.. profiler.StandardDeviationsAndCorrelations(), profiler.Residual(), .. profiler.FixedEffects()], fit.Deviance, fit.Notes);
                }
                catch (ArithmeticException)
                {
                    return new NotEstimable("the profile limits", Refusal.NotConverged, "a likelihood that falls on both sides of every estimate", "one that stays flat");
                }
            },
            refusal => refusal);
    }
}
