namespace SquadAnalytics.Statistics;

/// <summary>Natural logs of the two parts of the regularised incomplete gamma function.</summary>
/// <remarks>
/// Series below x = a + 1, continued fraction above it (Press et al. 2007, Numerical recipes, section 6.2, from memory), with the
/// prefactor x^a exp(-x) / Γ(a + 1) in Loader's form so that large a keeps its digits.
/// </remarks>
internal static class IncompleteGamma
{
    private const int MostSteps = 10_000_000;

    /// <summary>ln P(a, x).</summary>
    public static double LogLower(double a, double x)
    {
        if (x <= 0) return double.NegativeInfinity;
        return x < a + 1 ? LogSeries(a, x) : Elementary.LogOneMinusExp(LogFraction(a, x));
    }

    /// <summary>ln Q(a, x) = ln(1 - P(a, x)).</summary>
    public static double LogUpper(double a, double x)
    {
        if (x <= 0) return 0;
        return x < a + 1 ? Elementary.LogOneMinusExp(LogSeries(a, x)) : LogFraction(a, x);
    }

    private static double LogPrefactor(double a, double x) =>
        -SaddlePoint.StirlingError(a) - SaddlePoint.Deviance(a, x) - 0.5 * Math.Log(Math.Tau * a);

    private static double LogSeries(double a, double x)
    {
        double term = 1, sum = 1;
        for (var n = 1; n <= MostSteps; n++)
        {
            term *= x / (a + n);
            sum += term;
            if (term < sum * 1e-17) return Math.Min(0, LogPrefactor(a, x) + Math.Log(sum));
        }

        throw NotConverged(a, x);
    }

    private static double LogFraction(double a, double x)
    {
        var b = x + 1 - a;
        var c = double.MaxValue;
        var d = 1 / b;
        var fraction = d;
        for (var n = 1; n <= MostSteps; n++)
        {
            var coefficient = -n * (n - a);
            b += 2;
            d = 1 / NotZero(coefficient * d + b);
            c = NotZero(b + coefficient / c);
            var step = d * c;
            fraction *= step;
            if (Math.Abs(step - 1) < 4e-16) return Math.Min(0, LogPrefactor(a, x) + Math.Log(a) + Math.Log(fraction));
        }

        throw NotConverged(a, x);
    }

    private static double NotZero(double value) => Math.Abs(value) < 1e-300 ? 1e-300 : value;

    private static ArithmeticException NotConverged(double a, double x) =>
        new(FormattableString.Invariant($"The incomplete gamma function did not converge at a = {a}, x = {x}."));
}
