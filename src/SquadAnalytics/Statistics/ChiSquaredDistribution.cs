using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>The chi-squared distribution; the degrees of freedom need not be whole.</summary>
/// <remarks>Numbers without a unit. Source: textbook definition.</remarks>
public static class ChiSquaredDistribution
{
    /// <summary>P(X &lt;= x).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double Cdf(double x, double degreesOfFreedom) => Math.Exp(IncompleteGamma.LogLower(Require.Positive(degreesOfFreedom) / 2, x / 2));

    /// <summary>P(X > x), accurate when it is small.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double UpperTail(double x, double degreesOfFreedom) => Math.Exp(IncompleteGamma.LogUpper(Require.Positive(degreesOfFreedom) / 2, x / 2));

    /// <summary>The x with P(X &lt;= x) = <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1, or the degrees of freedom are not above 0.</exception>
    public static double Quantile(double probability, double degreesOfFreedom)
    {
        Require.Probability(probability);
        return probability <= 0.5
            ? LogQuantile.FromLower(x => IncompleteGamma.LogLower(Require.Positive(degreesOfFreedom) / 2, x / 2), Math.Log(probability), degreesOfFreedom)
            : UpperQuantile(1 - probability, degreesOfFreedom);
    }

    /// <summary>The x with P(X > x) = <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1, or the degrees of freedom are not above 0.</exception>
    public static double UpperQuantile(double probability, double degreesOfFreedom)
    {
        Require.Probability(probability);
        return probability > 0.5
            ? Quantile(1 - probability, degreesOfFreedom)
            : LogQuantile.FromUpper(x => IncompleteGamma.LogUpper(Require.Positive(degreesOfFreedom) / 2, x / 2), Math.Log(probability), degreesOfFreedom);
    }
}
