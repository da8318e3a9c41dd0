using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>The noncentral t distribution: (Z + δ) / √(χ²_ν / ν), which rules power and the limits of standardised effects.</summary>
/// <remarks>P(T &lt;= x) = E[Φ(x S - δ)] with S = √(χ²_ν / ν), by quadrature over S; the usual series loses the far tails. Without a unit. Source: textbook definition.</remarks>
public static class NoncentralTDistribution
{
    /// <summary>P(T &lt;= x).</summary>
    /// <param name="x">Where.</param>
    /// <param name="degreesOfFreedom">ν, at least 1, not necessarily whole.</param>
    /// <param name="noncentrality">δ, any finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">ν is below 1, or a number is not finite.</exception>
    public static double Cdf(double x, double degreesOfFreedom, double noncentrality)
    {
        Require.Finite(x);
        Require.Finite(noncentrality);
        if (!(degreesOfFreedom >= 1 && double.IsFinite(degreesOfFreedom)))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "The degrees of freedom must be 1 or more.");
        return Math.Min(1, ScaledChiQuadrature.Expectation(s => NormalDistribution.LogCdf(x * s - noncentrality), degreesOfFreedom, noncentrality * noncentrality));
    }

    /// <summary>P(T > x), accurate when it is small.</summary>
    /// <param name="x">Where.</param>
    /// <param name="degreesOfFreedom">ν, at least 1, not necessarily whole.</param>
    /// <param name="noncentrality">δ, any finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">ν is below 1, or a number is not finite.</exception>
    public static double UpperTail(double x, double degreesOfFreedom, double noncentrality) => Cdf(-x, degreesOfFreedom, -noncentrality);

    /// <summary>The x for which P(T &lt;= x) = <paramref name="probability"/>.</summary>
    /// <param name="probability">Strictly between 0 and 1.</param>
    /// <param name="degreesOfFreedom">ν, at least 1, not necessarily whole.</param>
    /// <param name="noncentrality">δ, any finite number.</param>
    /// <exception cref="ArgumentOutOfRangeException">ν is below 1, the probability is not strictly between 0 and 1, or δ is not finite.</exception>
    public static double Quantile(double probability, double degreesOfFreedom, double noncentrality)
    {
        Require.Probability(probability);
        return BracketedRoot.FindRising(x => Cdf(x, degreesOfFreedom, noncentrality) - probability, noncentrality, 1, 1e-13);
    }

    /// <summary>The noncentrality δ for which P(T &lt;= t) = <paramref name="probability"/>: a confidence limit of δ when t was observed.</summary>
    /// <param name="t">The observed t.</param>
    /// <param name="degreesOfFreedom">ν, at least 1.</param>
    /// <param name="probability">For a lower limit (1 + level)/2, for an upper limit (1 - level)/2.</param>
    /// <exception cref="ArgumentOutOfRangeException">ν is below 1, the probability is not strictly between 0 and 1, or t is not finite.</exception>
    public static double Noncentrality(double t, double degreesOfFreedom, double probability)
    {
        Require.Probability(probability);
        return BracketedRoot.FindRising(delta => probability - Cdf(t, degreesOfFreedom, delta), t, 1, 1e-13);
    }
}
