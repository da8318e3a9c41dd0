namespace SquadAnalytics.Statistics;

/// <summary>Kendall's rank correlation of two series; with time as x it is the Mann-Kendall test of a trend.</summary>
/// <remarks>
/// S = concordant minus discordant pairs; τ-b = S / √((pairs untied in x)(pairs untied in y)). Without ties and below 50 pairs the p-value
/// is exact, otherwise normal with the tie-corrected variance of S. Kendall (1938), Biometrika 30:81-93; Mann (1945), Econometrica
/// 13:245-259 (from memory; checked against R 4.2.2). S is counted by sorting (Knight 1966, J Am Stat Assoc 61:436-439, from memory), in n log n steps.
/// </remarks>
public sealed record KendallCorrelation
{
    /// <summary>The distribution of S is known exactly below this many pairs.</summary>
    internal const int ExactBelow = 50;

    private KendallCorrelation(int observations, long s, long concordant, double tau, double variance, bool isExact)
    {
        (Observations, S, Concordant, Tau, VarianceOfS, IsExact) = (observations, s, concordant, tau, variance, isExact);
    }

    /// <summary>Number of pairs (x, y).</summary>
    public int Observations { get; }

    /// <summary>Concordant minus discordant pairs of observations.</summary>
    public long S { get; }

    /// <summary>Concordant pairs of observations.</summary>
    public long Concordant { get; }

    /// <summary>τ-b, from -1 to 1.</summary>
    public double Tau { get; }

    /// <summary>Variance of S without association, corrected for ties.</summary>
    public double VarianceOfS { get; }

    /// <summary>Exact two-sided p-value, or null with ties or 50 observations and more.</summary>
    public double? ExactPValue => IsExact ? field ??= Exact(Observations, (int)Concordant) : null;

    /// <summary>Whether the distribution of S is known exactly: without ties and below 50 pairs.</summary>
    private bool IsExact { get; }

    /// <summary>S / √Var S.</summary>
    public double Z => S / Math.Sqrt(VarianceOfS);

    /// <summary>The same with S brought one nearer to 0, as in the Mann-Kendall test.</summary>
    public double ZWithContinuity => Math.Sign(S) * Math.Max(0, Math.Abs(S) - 1) / Math.Sqrt(VarianceOfS);

    /// <summary>The exact p-value where there is one, else the normal one without continuity correction.</summary>
    public double PValue => ExactPValue ?? NormalDistribution.TwoSidedPValue(Z);

    /// <summary>The Mann-Kendall p-value: normal, with continuity correction.</summary>
    public double MannKendallPValue => NormalDistribution.TwoSidedPValue(ZWithContinuity);

    /// <summary>Correlates two series.</summary>
    /// <remarks>Assumes independent pairs.</remarks>
    /// <param name="x">First series, for a trend the dates as numbers.</param>
    /// <param name="y">Second series.</param>
    /// <returns>The correlation, or <see cref="Refusal.TooFewObservations"/> below three pairs, or <see cref="Refusal.ZeroVariance"/> where a series is constant.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<KendallCorrelation> Fit(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        var (first, second) = (Numbers.Of(x, 0), Numbers.Of(y, 0));
        Numbers.SameLength(first, second, nameof(x), nameof(y));
        var n = first.Length;
        if (n < 3) return new NotEstimable("Kendall's correlation", Refusal.TooFewObservations, 3, n, "pairs");
        var (tiesX, tiesY) = (Ranks.Ties(first), Ranks.Ties(second));
        var (untiedX, untiedY) = (Pairs(n) - Tied(tiesX), Pairs(n) - Tied(tiesY));
        if (untiedX == 0 || untiedY == 0) return new NotEstimable("Kendall's correlation", Refusal.ZeroVariance, "two series that vary", "a constant one");
        (double X, double Y)[] points = [.. first.Zip(second).Order()];
        var discordant = Exchanges(Array.ConvertAll(points, point => point.Y));
        var concordant = untiedX + untiedY - Pairs(n) + Tied(Ranks.Ties(points)) - discordant;
        var s = concordant - discordant;
        var exact = tiesX.Length + tiesY.Length == 0 && n < ExactBelow;
        return new KendallCorrelation(n, s, concordant, s / Math.Sqrt((double)untiedX * untiedY), Variance(n, tiesX, tiesY), exact);
    }

    /// <summary>τ, S and p.</summary>
    public override string ToString() => FormattableString.Invariant($"Kendall's tau {Tau:0.000}, S {S}, p {PValue:G3}");

    private static long Pairs(long n) => n * (n - 1) / 2;

    private static long Tied(int[] ties) => ties.Sum(tie => Pairs(tie));

    /// <summary>How many pairs of neighbours a sort by exchanging them takes; the numbers are sorted on the way, half by half.</summary>
    private static long Exchanges(Span<double> numbers)
    {
        if (numbers.Length < 2) return 0;
        var half = numbers.Length / 2;
        var count = Exchanges(numbers[..half]) + Exchanges(numbers[half..]);
        var earlier = numbers[..half].ToArray();
        var (left, right) = (0, half);
        for (var place = 0; left < half; place++)
        {
            if (right == numbers.Length || earlier[left] <= numbers[right])
            {
                numbers[place] = earlier[left++];
            }
            else
            {
                numbers[place] = numbers[right++];
                count += half - left;
            }
        }

        return count;
    }

    private static double Exact(int n, int concordant)
    {
        var distribution = SumDistribution.OfConcordantPairs(n);
        return Math.Min(1, 2 * Math.Min(distribution.AtMost(concordant), distribution.AtLeast(concordant)));
    }

    private static double Variance(double n, int[] tiesX, int[] tiesY)
    {
        double Sum(int[] ties, Func<double, double> term) => ties.Sum(tie => term(tie));
        double Pairs(double t) => t * (t - 1);
        double Triples(double t) => t * (t - 1) * (t - 2);
        double Main(double t) => Pairs(t) * (2 * t + 5);
        return (Main(n) - Sum(tiesX, Main) - Sum(tiesY, Main)) / 18
            + Sum(tiesX, Pairs) * Sum(tiesY, Pairs) / (2 * Pairs(n))
            + Sum(tiesX, Triples) * Sum(tiesY, Triples) / (9 * Triples(n));
    }
}
