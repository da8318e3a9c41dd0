namespace SquadAnalytics.Statistics;

/// <summary>Pearson's product-moment correlation of two series.</summary>
/// <param name="Observations">Number of pairs.</param>
/// <param name="R">r, from -1 to 1.</param>
public sealed record PearsonCorrelation(int Observations, double R)
{
    /// <summary>t = r √((n - 2)/(1 - r²)) with n - 2 degrees of freedom, or null where r is 1 or -1.</summary>
    public double? T => Math.Abs(R) >= 1 ? null : R * Math.Sqrt((Observations - 2) / (1 - R * R));

    /// <summary>Two-sided p-value of no association, exact for normal data; 0 where r is 1 or -1.</summary>
    public double PValue => T is { } t ? StudentTDistribution.TwoSidedPValue(t, Observations - 2) : 0;

    /// <summary>Interval by Fisher's transformation tanh(artanh r ± z/√(n - 3)), or null with three pairs or r of 1 or -1.</summary>
    /// <remarks>z the normal quantile, n the pairs. Assumes and source as for <see cref="Fit"/>.</remarks>
    public Interval? Interval(ConfidenceLevel level) => FisherInterval(R, Observations - 3, level);

    /// <summary>Correlates two series.</summary>
    /// <remarks>r = Σ (x - x̄)(y - ȳ) / √(Σ (x - x̄)² Σ (y - ȳ)²), without a unit. Assumes independent pairs, jointly normal for p-value and interval. Source: Fisher (1921), Metron 1:3-32 (from memory).</remarks>
    /// <returns>The correlation, or <see cref="Refusal.TooFewObservations"/> below three pairs, or <see cref="Refusal.ZeroVariance"/> where a series is constant.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<PearsonCorrelation> Fit(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var (first, second) = (Numbers.Of(x, 0), Numbers.Of(y, 0));
        Numbers.SameLength(first, second, nameof(x), nameof(y));
        if (first.Length < 3) return new NotEstimable("Pearson's correlation", Refusal.TooFewObservations, 3, first.Length, "pairs");
        if (Coefficient(first, second) is not { } r) return new NotEstimable("Pearson's correlation", Refusal.ZeroVariance, "two series that vary", "a constant one");
        return new PearsonCorrelation(first.Length, r);
    }

    /// <summary>r and p.</summary>
    public override string ToString() => FormattableString.Invariant($"r {R:0.000}, n {Observations}, p {PValue:G3}");

    /// <summary>r of checked samples, or null where one is constant.</summary>
    internal static double? Coefficient(double[] x, double[] y)
    {
        var scale = Math.Sqrt(Descriptive.SumOfSquares(x)) * Math.Sqrt(Descriptive.SumOfSquares(y));
        return scale > 0 ? Math.Clamp(Descriptive.SumOfProducts(x, y) / scale, -1, 1) : null;
    }

    /// <summary>Fisher's interval with a given denominator n - 3 or its equivalent.</summary>
    internal static Interval? FisherInterval(double r, double information, ConfidenceLevel level)
    {
        if (information <= 0 || Math.Abs(r) >= 1) return null;
        var (centre, reach) = (Math.Atanh(r), NormalDistribution.UpperQuantile(level.Alpha / 2) / Math.Sqrt(information));
        return new Interval(Math.Tanh(centre - reach), Math.Tanh(centre + reach), level);
    }
}
