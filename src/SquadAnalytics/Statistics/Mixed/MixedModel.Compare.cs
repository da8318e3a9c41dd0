using System.Globalization;

namespace SquadAnalytics.Statistics;

public static partial class MixedModel
{
    /// <summary>Likelihood ratio test of two fits to the same observations, one model being a special case of the other.</summary>
    /// <remarks>
    /// χ² = deviance of the smaller minus deviance of the larger, df the difference of parameters. A variance of 0 lies on the boundary of its range, where
    /// this p-value is too large, about double with one variance. Source: Self and Liang (1987), J Am Stat Assoc 82:605-610 (from memory).
    /// </remarks>
    /// <param name="smaller">The fit with fewer parameters.</param>
    /// <param name="larger">The fit with more.</param>
    /// <exception cref="ArgumentException">Different observations, different criteria, REML fits with different fixed effects, or no more parameters.</exception>
    public static LikelihoodRatioTest Compare(MixedFit smaller, MixedFit larger)
    {
        ArgumentNullException.ThrowIfNull(smaller);
        ArgumentNullException.ThrowIfNull(larger);
        if (!smaller.Design.Response.Array.AsSpan().SequenceEqual(larger.Design.Response.Array))
            throw new ArgumentException("The two fits must rest on the same observations.", nameof(larger));
        if (smaller.Criterion != larger.Criterion)
            throw new ArgumentException("One fit is by REML, the other by maximum likelihood: their deviances are not comparable.", nameof(larger));
        var sameFixed = smaller.FixedEffects.Select(effect => effect.Name).SequenceEqual(larger.FixedEffects.Select(effect => effect.Name), StringComparer.Ordinal);
        if (smaller.Criterion == MixedCriterion.Reml && !sameFixed)
            throw new ArgumentException("REML fits with different fixed effects are not comparable; fit both by maximum likelihood.", nameof(larger));
        var df = larger.Parameters - smaller.Parameters;
        if (df < 1)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"The larger model must have more parameters than the smaller one, but has {larger.Parameters} against {smaller.Parameters}."), nameof(larger));
        }

        var chiSquared = Math.Max(0, smaller.Deviance - larger.Deviance);
        string[] notes = larger.FixedEffects.Count - smaller.FixedEffects.Count == df
            ? []
            : ["A variance of 0 lies on the boundary: for variances the p-value is too large, about double for one."];
        return new LikelihoodRatioTest(chiSquared, df, ChiSquaredDistribution.UpperTail(chiSquared, df), notes);
    }
}
