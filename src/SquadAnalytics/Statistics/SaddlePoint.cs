using MathNet.Numerics;

namespace SquadAnalytics.Statistics;

/// <summary>The two pieces of Loader's saddle-point form of binomial, gamma and t densities, accurate for very large parameters.</summary>
/// <remarks>
/// Written with log-gamma functions, a density with a parameter of 5·10⁵ loses seven digits to cancellation. Source: Loader (2000), Fast
/// and accurate computation of binomial probabilities (from memory; checked against R 4.2.2, which uses it).
/// </remarks>
internal static class SaddlePoint
{
    private const double ShiftBelow = 16;
    private const double HalfLogTwoPi = 0.91893853320467274178;

    /// <summary>Error of Stirling's formula, δ(z) = ln Γ(z + 1) - (z + ½) ln z + z - ½ ln 2π, for z above 0.</summary>
    public static double StirlingError(double z)
    {
        if (z < ShiftBelow) return SpecialFunctions.GammaLn(z + 1) - (z + 0.5) * Math.Log(z) + z - HalfLogTwoPi;
        var square = 1 / (z * z);
        return (1.0 / 12 - square * (1.0 / 360 - square * (1.0 / 1260 - square * (1.0 / 1680 - square * (1.0 / 1188))))) / z;
    }

    /// <summary>Deviance part D(x, m) = x ln(x/m) + m - x, for x and m above 0.</summary>
    public static double Deviance(double x, double mean)
    {
        var difference = x - mean;
        if (Math.Abs(difference) >= 0.1 * (x + mean)) return x * Math.Log(x / mean) - difference;
        var ratio = difference / (x + mean);
        var sum = difference * ratio;
        var term = 2 * x * ratio;
        for (var odd = 3; ; odd += 2)
        {
            term *= ratio * ratio;
            var next = sum + term / odd;
            if (next == sum) return sum;
            sum = next;
        }
    }
}
