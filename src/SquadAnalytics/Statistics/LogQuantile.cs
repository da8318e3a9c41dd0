namespace SquadAnalytics.Statistics;

/// <summary>Quantiles of positive variables, solved on the log scale so that extreme probabilities keep their relative accuracy.</summary>
internal static class LogQuantile
{
    /// <summary>The x above 0 with ln P(X &lt;= x) = <paramref name="logProbability"/>.</summary>
    public static double FromLower(Func<double, double> logCdf, double logProbability, double start) =>
        Math.Exp(BracketedRoot.FindRising(logX => Bounded(logCdf(Math.Exp(logX))) - logProbability, Math.Log(start), 0.5));

    /// <summary>The x above 0 with ln P(X > x) = <paramref name="logProbability"/>.</summary>
    public static double FromUpper(Func<double, double> logUpperTail, double logProbability, double start) =>
        Math.Exp(BracketedRoot.FindRising(logX => logProbability - Bounded(logUpperTail(Math.Exp(logX))), Math.Log(start), 0.5));

    // An underflowed tail has log -infinity, which the interpolation cannot use; any value below every double's log serves.
    private static double Bounded(double log) => Math.Max(log, -1e300);
}
