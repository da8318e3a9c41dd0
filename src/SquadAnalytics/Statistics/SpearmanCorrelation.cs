namespace SquadAnalytics.Statistics;

/// <summary>Spearman's rank correlation: Pearson's r of the ranks, ties averaged.</summary>
/// <param name="Observations">Number of pairs.</param>
/// <param name="Rho">ρ, from -1 to 1.</param>
/// <param name="PValue">Two-sided p-value: by all n! orders up to 9 pairs without ties, else by t with n - 2 degrees of freedom.</param>
/// <param name="IsExact">Whether the p-value is exact.</param>
public sealed record SpearmanCorrelation(int Observations, double Rho, double PValue, bool IsExact)
{
    private const int ExactUpTo = 9;

    /// <summary>Sum of squared rank differences that belongs to ρ: (n³ - n)(1 - ρ)/6.</summary>
    public double SumOfSquaredDifferences => (Math.Pow(Observations, 3) - Observations) * (1 - Rho) / 6;

    /// <summary>Interval by Fisher's transformation with the standard error 1.03 / √(n - 3) for ranks, or null below 4 pairs.</summary>
    /// <remarks>Fieller, Hartley and Pearson (1957), Biometrika 44:470-481 (from memory). An approximation; at |ρ| = 1 taken just inside.</remarks>
    public Interval? Interval(ConfidenceLevel level) => Interval(level, Observations);

    /// <summary>The interval for fewer independent pairs than there are.</summary>
    internal Interval? Interval(ConfidenceLevel level, double independent) => PearsonCorrelation.FisherInterval(Math.Clamp(Rho, -1 + 1e-12, 1 - 1e-12), (independent - 3) / (1.03 * 1.03), level);

    /// <summary>The two-sided p-value by t for fewer independent pairs than there are.</summary>
    internal double PValueFor(double independent) => independent < Observations ? Approximate(Rho, independent) : PValue;

    /// <summary>Correlates two series.</summary>
    /// <remarks>Assumes independent pairs. Source: Spearman (1904), Am J Psychol 15:72-101 (from memory).</remarks>
    /// <returns>The correlation, or <see cref="Refusal.TooFewObservations"/> below three pairs, or <see cref="Refusal.ZeroVariance"/> where a series is constant.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<SpearmanCorrelation> Fit(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var (first, second) = (Numbers.Of(x, 0), Numbers.Of(y, 0));
        Numbers.SameLength(first, second, nameof(x), nameof(y));
        var n = first.Length;
        if (n < 3) return new NotEstimable("Spearman's correlation", Refusal.TooFewObservations, 3, n, "pairs");
        var (ranksX, ranksY) = (Ranks.Doubled(first), Ranks.Doubled(second));
        var rho = PearsonCorrelation.Coefficient(Array.ConvertAll(ranksX, rank => (double)rank), Array.ConvertAll(ranksY, rank => (double)rank));
        if (rho is not { } r) return new NotEstimable("Spearman's correlation", Refusal.ZeroVariance, "two series that vary", "a constant one");
        var exact = n <= ExactUpTo && Ranks.Ties(first).Length + Ranks.Ties(second).Length == 0;
        return new SpearmanCorrelation(n, r, exact ? Exact(ranksX, ranksY) : Approximate(r, n), exact);
    }

    /// <summary>ρ and p.</summary>
    public override string ToString() => FormattableString.Invariant($"Spearman's rho {Rho:0.000}, n {Observations}, p {PValue:G3}");

    private static double Approximate(double rho, double n) =>
        Math.Abs(rho) >= 1 ? 0 : StudentTDistribution.TwoSidedPValue(rho * Math.Sqrt((n - 2) / (1 - rho * rho)), n - 2);

    // Doubled ranks: squared differences are four times those of the ranks, which changes no order.
    private static double Exact(int[] ranksX, int[] ranksY)
    {
        var observed = ranksX.Zip(ranksY, (a, b) => (a - b) * (a - b)).Sum();
        var (all, atMost, atLeast) = (0, 0, 0);
        void Visit(int place, int sum, int used)
        {
            if (place == ranksX.Length)
            {
                all++;
                if (sum <= observed) atMost++;
                if (sum >= observed) atLeast++;
                return;
            }

            for (var other = 0; other < ranksY.Length; other++)
            {
                if ((used & (1 << other)) != 0) continue;
                var difference = ranksX[place] - ranksY[other];
                Visit(place + 1, sum + difference * difference, used | (1 << other));
            }
        }

        Visit(0, 0, 0);
        return Math.Min(1, 2.0 * Math.Min(atMost, atLeast) / all);
    }
}
