namespace SquadAnalytics.Statistics;

/// <summary>
/// Distribution of the place s that maximises W(s) - |s|/2, W a Brownian motion on both sides of 0 whose variance per unit is 1 to the left and φ to the
/// right: the limit law of an estimated break.
/// </summary>
/// <remarks>Source: Bai (1997), Rev Econ Stat 79:551-563 (from memory; limits checked against R 4.2.2, strucchange 1.5-3).</remarks>
internal sealed class BreakPlaceDistribution(double varianceRatio)
{
    // Beyond this one side is all but free of scatter, and the other alone decides.
    private const double LargestRatio = 1e4;

    private readonly double _phi = Math.Clamp(varianceRatio, 1 / LargestRatio, LargestRatio);

    /// <summary>Probability of a place at or below s.</summary>
    public double Cdf(double s) => s < 0 ? Left(-s) : Right(s);

    public double Quantile(double probability)
    {
        var far = 1.0;
        if (probability < Cdf(0))
        {
            while (Cdf(-far) > probability) far *= 2;
            return BracketedRoot.Find(s => Cdf(s) - probability, -far, 0);
        }

        while (Cdf(far) < probability) far *= 2;
        return BracketedRoot.Find(s => Cdf(s) - probability, 0, far);
    }

    private double Left(double z)
    {
        var root = Math.Sqrt(z);
        var inverse = 1 / _phi;
        return Math.Exp(-z / 8) * (-root / Math.Sqrt(Math.Tau) - _phi * (_phi + 2) / (_phi + 1) * Tail((0.5 + inverse) * root))
            + (z / 2 - 2 + (_phi + 2) * (_phi + 2) / (_phi + 1)) * NormalDistribution.Cdf(-root / 2);
    }

    private double Right(double z)
    {
        var root = Math.Sqrt(z / _phi);
        return 1 + Math.Exp(-z / (8 * _phi)) * (root / Math.Sqrt(Math.Tau) + (2 * _phi + 1) / (_phi * (_phi + 1)) * Tail((_phi + 0.5) * root))
            - ((2 * _phi + 1) * (2 * _phi + 1) / ((_phi + 1) * _phi) - 2 + z / (2 * _phi)) * NormalDistribution.Cdf(-root / 2);
    }

    /// <summary>exp(a²/2)Φ(-a); for large a by the first terms of its asymptotic series, so that nothing overflows.</summary>
    private static double Tail(double a) => a < 20
        ? Math.Exp(a * a / 2 + NormalDistribution.LogCdf(-a))
        : (1 - 1 / (a * a) + 3 / (a * a * a * a)) / (a * Math.Sqrt(Math.Tau));
}
