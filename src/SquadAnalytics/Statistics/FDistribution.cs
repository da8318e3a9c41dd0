using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Snedecor's F distribution; the degrees of freedom need not be whole.</summary>
/// <remarks>Numbers without a unit. Source: textbook definition.</remarks>
public static class FDistribution
{
    /// <summary>P(F &lt;= x).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom are not above 0.</exception>
    public static double Cdf(double x, double numeratorDf, double denominatorDf) => Math.Exp(LogCdf(x, Require.Positive(numeratorDf), Require.Positive(denominatorDf)));

    /// <summary>P(F > x), accurate when it is small.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Degrees of freedom are not above 0.</exception>
    public static double UpperTail(double x, double numeratorDf, double denominatorDf) =>
        Math.Exp(LogUpperTail(x, Require.Positive(numeratorDf), Require.Positive(denominatorDf)));

    /// <summary>The x with P(F &lt;= x) = <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1, or degrees of freedom are not above 0.</exception>
    public static double Quantile(double probability, double numeratorDf, double denominatorDf)
    {
        Require.Probability(probability);
        Require.Positive(numeratorDf);
        Require.Positive(denominatorDf);
        return probability <= 0.5
            ? LogQuantile.FromLower(x => LogCdf(x, numeratorDf, denominatorDf), Math.Log(probability), 1)
            : UpperQuantile(1 - probability, numeratorDf, denominatorDf);
    }

    /// <summary>The x with P(F > x) = <paramref name="probability"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The probability is not strictly between 0 and 1, or degrees of freedom are not above 0.</exception>
    public static double UpperQuantile(double probability, double numeratorDf, double denominatorDf)
    {
        Require.Probability(probability);
        Require.Positive(numeratorDf);
        Require.Positive(denominatorDf);
        return probability > 0.5
            ? Quantile(1 - probability, numeratorDf, denominatorDf)
            : LogQuantile.FromUpper(x => LogUpperTail(x, numeratorDf, denominatorDf), Math.Log(probability), 1);
    }

    private static double LogCdf(double x, double numeratorDf, double denominatorDf)
    {
        if (x <= 0) return double.NegativeInfinity;
        var odds = numeratorDf / denominatorDf * x;
        return IncompleteBeta.LogLower(numeratorDf / 2, denominatorDf / 2, double.IsInfinity(odds) ? 1 : odds / (1 + odds), 1 / (1 + odds));
    }

    private static double LogUpperTail(double x, double numeratorDf, double denominatorDf)
    {
        if (x <= 0) return 0;
        var odds = numeratorDf / denominatorDf * x;
        return IncompleteBeta.LogUpper(numeratorDf / 2, denominatorDf / 2, double.IsInfinity(odds) ? 1 : odds / (1 + odds), 1 / (1 + odds));
    }
}
