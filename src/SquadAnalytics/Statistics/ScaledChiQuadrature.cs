namespace SquadAnalytics.Statistics;

/// <summary>Expectations E[g(S)] over S = √(χ²_ν / ν), the ratio of an estimated to a true standard deviation.</summary>
/// <remarks>
/// Trapezoidal sum over u = ln s. The integrand is smooth and dies off on both sides, so the sum converges faster than any power of its
/// step, and as every term is positive a small expectation keeps its relative accuracy.
/// </remarks>
internal static class ScaledChiQuadrature
{
    // Terms e⁻⁴⁴ below the largest change no digit of the sum.
    private const double Negligible = 44;

    /// <summary>E[exp(logFactor(S))] for a factor that makes the integrand unimodal.</summary>
    /// <param name="logFactor">ln g(s).</param>
    /// <param name="degreesOfFreedom">ν, at least 1.</param>
    /// <param name="sharpness">Curvature scale of ln g in ln s: g must not change much over 1/√sharpness.</param>
    public static double Expectation(Func<double, double> logFactor, double degreesOfFreedom, double sharpness)
    {
        var half = degreesOfFreedom / 2;
        var logConstant = Math.Log(2) + Math.Log(half) / 2 - Math.Log(Math.Tau) / 2 - SaddlePoint.StirlingError(half);
        double LogTerm(double u) => degreesOfFreedom * (u - Elementary.ExpMinusOne(2 * u) / 2) + logFactor(Math.Exp(u));
        var step = 1 / (3 * Math.Sqrt(2 * degreesOfFreedom + sharpness + 2));
        var peak = Peak(LogTerm, 2 * step);
        var largest = LogTerm(peak);
        if (double.IsNegativeInfinity(largest)) return 0;
        var sum = 1.0;
        foreach (var direction in (double[])[step, -step])
        {
            for (var k = 1; ; k++)
            {
                var below = LogTerm(peak + k * direction) - largest;
                if (below < -Negligible) break;
                sum += Math.Exp(below);
            }
        }

        return Math.Exp(logConstant + largest + Math.Log(sum * step));
    }

    // Golden section on a unimodal function, after moving an end of the range outwards where it still rises there. Where the function
    // is -infinity on both sides of the middle, a factor has underflowed at large s, and the peak lies to the left.
    private static double Peak(Func<double, double> function, double precision)
    {
        const double golden = 0.6180339887498949;
        double low = -30, high = 6;
        while (low > -600 && function(low) > function(low + 0.1)) low *= 2;
        while (high < 300 && function(high) > function(high - 0.1)) high *= 2;
        var (left, right) = (high - golden * (high - low), low + golden * (high - low));
        var (atLeft, atRight) = (function(left), function(right));
        while (high - low > precision)
        {
            if (atLeft < atRight)
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + golden * (high - low);
                atRight = function(right);
            }
            else
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - golden * (high - low);
                atLeft = function(left);
            }
        }

        return (low + high) / 2;
    }
}
