namespace SquadAnalytics.Statistics;

/// <summary>Natural logs of the two parts of the regularised incomplete beta function; x and y = 1 - x are both given, so neither is rounded away.</summary>
/// <remarks>
/// I_x(a, b) is the prefactor x^a y^b / B(a, b), in Loader's form, divided by the even part of the usual continued fraction (DiDonato &amp;
/// Morris 1992, ACM Trans Math Softw 18:360-373, from memory), evaluated by Lentz's method on the side where it converges fast. That part
/// needs x only through a y - b x, so it does not cancel when x is close to 1. MathNet.Numerics 5.0.0 has the same function but loses
/// seven digits at a = 5·10⁵ (t distribution with 10⁶ degrees of freedom), hence this one.
/// </remarks>
internal static class IncompleteBeta
{
    private const int MostSteps = 1_000_000;

    /// <summary>ln I_x(a, b) where <paramref name="y"/> = 1 - x.</summary>
    public static double LogLower(double a, double b, double x, double y)
    {
        if (x <= 0) return double.NegativeInfinity;
        if (y <= 0) return 0;
        return IsFastSide(a, b, x) ? LogFraction(a, b, x, y) : Elementary.LogOneMinusExp(LogFraction(b, a, y, x));
    }

    /// <summary>ln(1 - I_x(a, b)) where <paramref name="y"/> = 1 - x.</summary>
    public static double LogUpper(double a, double b, double x, double y) => LogLower(b, a, y, x);

    private static bool IsFastSide(double a, double b, double x) => x <= (a + 1) / (a + b + 2);

    private static double LogFraction(double a, double b, double x, double y)
    {
        var sum = a + b;
        var logPrefactor = SaddlePoint.StirlingError(sum) - SaddlePoint.StirlingError(a) - SaddlePoint.StirlingError(b)
            - SaddlePoint.Deviance(a, sum * x) - SaddlePoint.Deviance(b, sum * y) + 0.5 * Math.Log(a / (Math.Tau * sum) * b);
        return Math.Min(0, logPrefactor - Math.Log(ContinuedFraction(a, b, x, a * y - b * x)));
    }

    // x^a y^b / (B(a, b) I_x(a, b)); distance = a y - b x is a (1 - x) - b x without cancellation.
    private static double ContinuedFraction(double a, double b, double x, double distance)
    {
        var fraction = NotZero(a * (distance + 1) / (a + 1));
        var numerator = fraction;
        double denominator = 0;
        for (double m = 1; m <= MostSteps; m++)
        {
            var span = a + 2 * m - 1;
            var partialNumerator = (a + m - 1) / span * ((a + b + m - 1) / span) * m * (b - m) * x * x;
            var partialDenominator = m + m * (b - m) * x / span + (a + m) / (span + 2) * (distance + 1 + m * (2 - x));
            denominator = 1 / NotZero(partialDenominator + partialNumerator * denominator);
            numerator = NotZero(partialDenominator + partialNumerator / numerator);
            var step = numerator * denominator;
            fraction *= step;
            if (Math.Abs(step - 1) < 4e-16) return fraction;
        }

        throw new ArithmeticException(FormattableString.Invariant($"The incomplete beta function did not converge at a = {a}, b = {b}, x = {x}."));
    }

    private static double NotZero(double value) => Math.Abs(value) < 1e-300 ? 1e-300 : value;
}
