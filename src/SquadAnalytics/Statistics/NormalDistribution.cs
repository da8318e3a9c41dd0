using MathNet.Numerics;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>The standard normal distribution.</summary>
/// <remarks>Numbers without a unit. Source: textbook definition.</remarks>
public static class NormalDistribution
{
    private const double SquareRootOfTwo = 1.4142135623730951;
    private const double HalfLogTwoPi = 0.91893853320467274178;
    private const double FarTail = -30;

    /// <summary>Φ(x) = P(Z &lt;= x), with relative accuracy in the lower tail.</summary>
    public static double Cdf(double x) => SpecialFunctions.Erfc(-x / SquareRootOfTwo) / 2;

    /// <summary>P(Z > x), with relative accuracy in the upper tail.</summary>
    public static double UpperTail(double x) => SpecialFunctions.Erfc(x / SquareRootOfTwo) / 2;

    /// <summary>ln Φ(x), also where Φ(x) itself is too small for a double.</summary>
    public static double LogCdf(double x)
    {
        if (x > 0) return Elementary.LogOnePlus(-UpperTail(x));
        return x > FarTail ? Math.Log(Cdf(x)) : -x * x / 2 - HalfLogTwoPi - Math.Log(InverseMillsRatio(-x));
    }

    /// <summary>Density φ(x).</summary>
    public static double Density(double x) => Math.Exp(-x * x / 2 - HalfLogTwoPi);

    /// <summary>The x with Φ(x) = <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1.</exception>
    public static double Quantile(double probability) => -UpperQuantile(Require.Probability(probability));

    /// <summary>The x with P(Z > x) = <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1.</exception>
    public static double UpperQuantile(double probability) => SquareRootOfTwo * SpecialFunctions.ErfcInv(2 * Require.Probability(probability));

    /// <summary>Two-sided p-value 2 P(Z > |z|).</summary>
    public static double TwoSidedPValue(double z) => SpecialFunctions.Erfc(Math.Abs(z) / SquareRootOfTwo);

    // φ(x) / P(Z > x) = x + 1/(x + 2/(x + 3/(x + ...))), Laplace; at x >= 30 twenty terms are far more than a double holds.
    private static double InverseMillsRatio(double x)
    {
        var tail = x;
        for (var k = 20; k > 0; k--) tail = x + k / tail;
        return tail;
    }
}
