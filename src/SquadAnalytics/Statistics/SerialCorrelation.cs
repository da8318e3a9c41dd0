namespace SquadAnalytics.Statistics;

/// <summary>Whether residuals in time order hang together with their neighbours; without a unit.</summary>
/// <remarks>Assumes residuals in time order, evenly spaced; gaps are passed over.</remarks>
public static class SerialCorrelation
{
    /// <summary>Durbin-Watson statistic Σ (e_i - e_(i-1))² / Σ e_i², about 2 without serial correlation; null where all residuals are 0.</summary>
    /// <remarks>Durbin &amp; Watson (1950), Biometrika 37:409-428 (from memory).</remarks>
    /// <exception cref="ArgumentException">There are fewer than two residuals, or one is not finite.</exception>
    public static double? DurbinWatson(IReadOnlyList<double> residuals)
    {
        var e = Numbers.Of(residuals, 2);
        double[] steps = [.. e.Skip(1).Select((value, i) => value - e[i])];
        return Ratio(CompensatedSum.OfProducts(steps, steps), e);
    }

    /// <summary>Lag-1 autocorrelation r1 = Σ e_i e_(i-1) / Σ e_i² of residuals, taken about 0; null where all residuals are 0.</summary>
    /// <remarks>Source: textbook definition.</remarks>
    /// <exception cref="ArgumentException">There are fewer than two residuals, or one is not finite.</exception>
    public static double? Lag1(IReadOnlyList<double> residuals)
    {
        var e = Numbers.Of(residuals, 2);
        return Ratio(CompensatedSum.OfProducts(e.AsSpan(1), e.AsSpan(0, e.Length - 1)), e);
    }

    private static double? Ratio(double numerator, double[] residuals)
    {
        var total = CompensatedSum.OfProducts(residuals, residuals);
        return total == 0 ? null : numerator / total;
    }
}
