using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Ratio of two means of paired values with Fieller's interval.</summary>
internal static class Fieller
{
    /// <summary>
    /// R = x̄/ȳ; v the (co)variances of the means, g = t² v22/ȳ²; limits
    /// [(R - g v12/v22) ± (t/ȳ) √(v11 - 2 R v12 + R² v22 - g (v11 - v12²/v22))] / (1 - g). Source, from memory: Fieller 1954, J R Stat Soc B 16:175-185.
    /// </summary>
    public static Answer<Estimate> Ratio(double[] numerator, double[] denominator, double t, ConfidenceLevel level, string measure)
    {
        var m = numerator.Length;
        double top = Descriptive.Mean(numerator), bottom = Descriptive.Mean(denominator), v11 = 0, v12 = 0, v22 = 0;
        for (var s = 0; s < m; s++)
        {
            double x = numerator[s] - top, y = denominator[s] - bottom;
            v11 += x * x;
            v12 += x * y;
            v22 += y * y;
        }

        var scale = (double)m * (m - 1);
        (v11, v12, v22) = (v11 / scale, v12 / scale, v22 / scale);
        var g = bottom == 0 ? double.PositiveInfinity : t * t * v22 / (bottom * bottom);
        if (g >= 1) return new NotEstimable(measure, Refusal.RatioUnstable, "a slow-down that is clearly not 0", "a slow-down whose interval holds 0");
        var ratio = top / bottom;
        var slant = v22 > 0 ? v12 / v22 : 0;
        var inner = v11 - 2 * ratio * v12 + ratio * ratio * v22 - g * (v11 - v12 * slant);
        var reach = t / Math.Abs(bottom) * Math.Sqrt(Math.Max(0, inner));
        return new Estimate(ratio, Unit.None, m, "ratio of means over sessions, Fieller interval")
        {
            StandardError = Math.Sqrt(Math.Max(0, v11 - 2 * ratio * v12 + ratio * ratio * v22)) / Math.Abs(bottom),
            DegreesOfFreedom = m - 1,
            Interval = new Interval((ratio - g * slant - reach) / (1 - g), (ratio - g * slant + reach) / (1 - g), level),
        };
    }
}
