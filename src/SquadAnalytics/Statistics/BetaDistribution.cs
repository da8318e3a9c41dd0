using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>The beta distribution on 0 to 1 with shape parameters a and b; its CDF is the regularised incomplete beta function.</summary>
/// <remarks>Numbers without a unit. Source: textbook definition.</remarks>
public static class BetaDistribution
{
    /// <summary>P(X &lt;= x) = I_x(a, b).</summary>
    /// <exception cref="ArgumentOutOfRangeException">a or b is not above 0.</exception>
    public static double Cdf(double x, double a, double b) => Math.Exp(IncompleteBeta.LogLower(Require.Positive(a), Require.Positive(b), x, 1 - x));

    /// <summary>P(X > x), accurate when it is small.</summary>
    /// <exception cref="ArgumentOutOfRangeException">a or b is not above 0.</exception>
    public static double UpperTail(double x, double a, double b) => Math.Exp(IncompleteBeta.LogUpper(Require.Positive(a), Require.Positive(b), x, 1 - x));

    /// <summary>The x with P(X &lt;= x) = <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1, or a or b is not above 0.</exception>
    public static double Quantile(double probability, double a, double b)
    {
        Require.Probability(probability);
        // x/(1 - x) is a positive variable: solving for it keeps the digits near both ends.
        var odds = probability <= 0.5
            ? LogQuantile.FromLower(r => IncompleteBeta.LogLower(Require.Positive(a), Require.Positive(b), r / (1 + r), 1 / (1 + r)), Math.Log(probability), a / b)
            : LogQuantile.FromUpper(r => IncompleteBeta.LogUpper(Require.Positive(a), Require.Positive(b), r / (1 + r), 1 / (1 + r)), Math.Log(1 - probability), a / b);
        return double.IsInfinity(odds) ? 1 : odds / (1 + odds);
    }
}
