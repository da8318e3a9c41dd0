using MathNet.Numerics;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>The gamma function and the regularised incomplete gamma function.</summary>
/// <remarks>Numbers without a unit. Source: textbook definition.</remarks>
public static class GammaFunction
{
    /// <summary>ln Γ(x) for x above 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">x is not a finite number above 0.</exception>
    public static double Log(double x) => SpecialFunctions.GammaLn(Require.Positive(x));

    /// <summary>P(a, x), the share of the gamma integral below x.</summary>
    /// <exception cref="ArgumentOutOfRangeException">a is not above 0.</exception>
    public static double LowerRegularized(double a, double x) => Math.Exp(IncompleteGamma.LogLower(Require.Positive(a), x));

    /// <summary>Q(a, x) = 1 - P(a, x), accurate when it is small.</summary>
    /// <exception cref="ArgumentOutOfRangeException">a is not above 0.</exception>
    public static double UpperRegularized(double a, double x) => Math.Exp(IncompleteGamma.LogUpper(Require.Positive(a), x));
}
