using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>The studentised range: the range of k independent normal means over an estimated standard error (Tukey's comparisons).</summary>
/// <remarks>
/// P(Q > q) = E[1 - R_k(q S)] with S = √(χ²_ν / ν) and R_k the distribution of the range of k standard normals,
/// R_k(w) = k ∫ φ(z) (Φ(z) - Φ(z - w))^(k-1) dz. Both by trapezoidal sums; the complement is summed as such, so small tails are exact. Without a unit. Source: textbook definition.
/// </remarks>
public static class StudentizedRangeDistribution
{
    private const double Reach = 9;
    private const double Step = 0.25;

    /// <summary>P(Q > q).</summary>
    /// <param name="q">The studentised range, 0 or more.</param>
    /// <param name="groups">k, how many means are compared, 2 or more.</param>
    /// <param name="degreesOfFreedom">ν of the standard error, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double UpperTail(double q, int groups, double degreesOfFreedom)
    {
        Require.AtLeast(2, groups);
        if (!(q >= 0 && double.IsFinite(q))) throw new ArgumentOutOfRangeException(nameof(q), q, "A studentised range is 0 or more.");
        if (!(degreesOfFreedom >= 1 && double.IsFinite(degreesOfFreedom)))
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "The degrees of freedom must be 1 or more.");
        return q == 0 ? 1 : Math.Min(1, ScaledChiQuadrature.Expectation(s => Math.Log(RangeUpperTail(q * s, groups)), degreesOfFreedom, q * q));
    }

    /// <summary>P(Q &lt;= q).</summary>
    /// <param name="q">The studentised range, 0 or more.</param>
    /// <param name="groups">k, how many means are compared, 2 or more.</param>
    /// <param name="degreesOfFreedom">ν of the standard error, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double Cdf(double q, int groups, double degreesOfFreedom) => 1 - UpperTail(q, groups, degreesOfFreedom);

    /// <summary>The q with P(Q > q) = <paramref name="probability"/>.</summary>
    /// <param name="probability">Upper-tail probability, for example 0.05.</param>
    /// <param name="groups">k, how many means are compared, 2 or more.</param>
    /// <param name="degreesOfFreedom">ν of the standard error, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double UpperQuantile(double probability, int groups, double degreesOfFreedom)
    {
        var logProbability = Math.Log(Require.Probability(probability));
        return Math.Exp(BracketedRoot.FindRising(logQ => logProbability - Math.Log(UpperTail(Math.Exp(logQ), groups, degreesOfFreedom)), 1, 0.5, 1e-11));
    }

    // 1 - R_k(w) = k ∫ φ Φ^(k-1) (1 - (1 - Φ(z - w)/Φ(z))^(k-1)) dz.
    private static double RangeUpperTail(double w, int groups)
    {
        var others = groups - 1;
        var end = Math.Max(Reach, w / 2 + Reach);
        double sum = 0;
        for (var z = -Reach; z <= end; z += Step)
        {
            var (below, farBelow) = (NormalDistribution.Cdf(z), NormalDistribution.Cdf(z - w));
            var outside = farBelow >= below ? 1 : -Elementary.ExpMinusOne(others * Elementary.LogOnePlus(-farBelow / below));
            sum += NormalDistribution.Density(z) * Math.Pow(below, others) * outside;
        }

        return Math.Min(1, groups * sum * Step);
    }
}
