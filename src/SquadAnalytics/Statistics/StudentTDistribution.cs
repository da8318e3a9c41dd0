using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Student's t distribution; the degrees of freedom need not be whole. Above 10¹² degrees of freedom it is the normal distribution.</summary>
/// <remarks>Numbers without a unit. Source: textbook definition.</remarks>
public static class StudentTDistribution
{
    private const double NormalAbove = 1e12;
    private const double LogTwo = 0.6931471805599453;

    /// <summary>P(T &lt;= x), with relative accuracy in the lower tail.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double Cdf(double x, double degreesOfFreedom) => UpperTail(-x, degreesOfFreedom);

    /// <summary>P(T > x), with relative accuracy in the upper tail.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double UpperTail(double x, double degreesOfFreedom)
    {
        if (Degrees(degreesOfFreedom) > NormalAbove) return NormalDistribution.UpperTail(x);
        return x > 0 ? Math.Exp(LogTail(x, degreesOfFreedom)) : 1 - Math.Exp(LogTail(-x, degreesOfFreedom));
    }

    /// <summary>ln P(T &lt;= x), also where the probability itself is too small for a double.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double LogCdf(double x, double degreesOfFreedom)
    {
        if (Degrees(degreesOfFreedom) > NormalAbove) return NormalDistribution.LogCdf(x);
        return x < 0 ? LogTail(-x, degreesOfFreedom) : Elementary.LogOneMinusExp(LogTail(x, degreesOfFreedom));
    }

    /// <summary>Density of T at x.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double Density(double x, double degreesOfFreedom)
    {
        if (Degrees(degreesOfFreedom) > NormalAbove) return NormalDistribution.Density(x);
        var half = degreesOfFreedom / 2;
        var logConstant = SaddlePoint.StirlingError(half + 0.5) - SaddlePoint.StirlingError(half) - SaddlePoint.Deviance(half, half + 0.5);
        var ratio = x / degreesOfFreedom * x;
        return Math.Exp(logConstant - (half + 0.5) * Elementary.LogOnePlus(ratio)) / Math.Sqrt(Math.Tau);
    }

    /// <summary>The x with P(T &lt;= x) = <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1, or the degrees of freedom are not above 0.</exception>
    public static double Quantile(double probability, double degreesOfFreedom)
    {
        Require.Probability(probability);
        return probability <= 0.5 ? -UpperQuantile(probability, degreesOfFreedom) : UpperQuantile(1 - probability, degreesOfFreedom);
    }

    /// <summary>The x with P(T > x) = <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1, or the degrees of freedom are not above 0.</exception>
    public static double UpperQuantile(double probability, double degreesOfFreedom)
    {
        Require.Probability(probability);
        if (Degrees(degreesOfFreedom) > NormalAbove) return NormalDistribution.UpperQuantile(probability);
        if (probability > 0.5) return -UpperQuantile(1 - probability, degreesOfFreedom);
        if (probability == 0.5) return 0;
        var start = Math.Max(1e-300, NormalDistribution.UpperQuantile(probability));
        return probability > 0.25
            ? LogQuantile.FromLower(x => LogCentre(x, degreesOfFreedom), Math.Log(1 - 2 * probability), start)
            : Newton(probability, degreesOfFreedom, start) ?? LogQuantile.FromUpper(x => LogTail(x, degreesOfFreedom), Math.Log(probability), start);
    }

    // The log of the tail is a concave, falling function of ln x: the first step lands at or beyond the quantile, all others come back towards it.
    private static double? Newton(double probability, double df, double start)
    {
        const int steps = 40;
        var logProbability = Math.Log(probability);
        var (x, last) = (start, double.PositiveInfinity);
        for (var step = 0; step < steps; step++)
        {
            var logTail = LogTail(x, df);
            var move = (logTail - logProbability) * Math.Exp(logTail) / (x * Density(x, df));
            if (!double.IsFinite(move)) return null;
            x *= Math.Exp(move);

            // Quadratic: a move of 1e-9 leaves an error of rounding only; one that no longer shrinks is rounding itself.
            if (Math.Abs(move) < 1e-9 || (step > 1 && Math.Abs(move) >= last)) return double.IsFinite(x) ? x : null;
            last = Math.Abs(move);
        }

        return null;
    }

    /// <summary>Two-sided p-value 2 P(T > |t|).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double TwoSidedPValue(double t, double degreesOfFreedom) => Math.Min(1, 2 * UpperTail(Math.Abs(t), degreesOfFreedom));

    /// <summary>The factor q_t((1 + level) / 2) by which a standard error is multiplied for a two-sided interval.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public static double TwoSidedFactor(ConfidenceLevel level, double degreesOfFreedom) => UpperQuantile(level.Alpha / 2, degreesOfFreedom);

    // ln P(T > x) for x >= 0: half of I_w(df/2, 1/2) at w = df/(df + x²). Where w underflows, its first term is exact.
    private static double LogTail(double x, double df)
    {
        var ratio = x / df * x;
        if (ratio < 1e100) return IncompleteBeta.LogLower(df / 2, 0.5, 1 / (1 + ratio), ratio / (1 + ratio)) - LogTwo;
        var logBeta = GammaFunction.Log(df / 2) + GammaFunction.Log(0.5) - GammaFunction.Log((df + 1) / 2);
        return df / 2 * (Math.Log(df) - 2 * Math.Log(x)) - Math.Log(df / 2) - logBeta - LogTwo;
    }

    // ln P(-x < T < x).
    private static double LogCentre(double x, double df)
    {
        var ratio = x / df * x;
        return IncompleteBeta.LogLower(0.5, df / 2, ratio / (1 + ratio), 1 / (1 + ratio));
    }

    private static double Degrees(double degreesOfFreedom) => double.IsPositiveInfinity(degreesOfFreedom) ? degreesOfFreedom : Require.Positive(degreesOfFreedom);
}
