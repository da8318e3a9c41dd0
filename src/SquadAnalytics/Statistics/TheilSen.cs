namespace SquadAnalytics.Statistics;

/// <summary>Theil-Sen line: the median of all pairwise slopes, hardly moved by a few odd points.</summary>
/// <remarks>
/// Slope = median of (y_j - y_i)/(x_j - x_i) over pairs with different x. Limits: with M such slopes and C = z √Var(S), Kendall's S, the
/// order statistics of rank (M - C)/2 and (M + C)/2 + 1. Theil (1950), Proc K Ned Akad Wet 53; Sen (1968), J Am Stat Assoc 63:1379-1389
/// (from memory; checked against the definitions in R 4.2.2). Time and memory grow with the square of the points: at most 3,000.
/// </remarks>
public sealed record TheilSen
{
    // Two tests a week for 28 years; 36 MB of slopes.
    private const int MostPoints = 3_000;

    private TheilSen(double[] slopes, double intercept, double interceptOfMedians, KendallCorrelation kendall, Interval? interval, double? achieved)
    {
        (PairwiseSlopes, Slope) = (slopes.Length, Descriptive.MedianOfSorted(slopes));
        (Intercept, InterceptOfMedians, Kendall, Interval, AchievedConfidence) = (intercept, interceptOfMedians, kendall, interval, achieved);
    }

    /// <summary>Median pairwise slope.</summary>
    public double Slope { get; }

    /// <summary>Intercept: median of y - slope x.</summary>
    public double Intercept { get; }

    /// <summary>The other usual intercept: median y - slope × median x.</summary>
    public double InterceptOfMedians { get; }

    /// <summary>How many pairwise slopes there are.</summary>
    public int PairwiseSlopes { get; }

    /// <summary>Kendall's correlation and the Mann-Kendall test that belong to the slope.</summary>
    public KendallCorrelation Kendall { get; }

    /// <summary>Interval of the slope, or null where there are too few slopes for the level.</summary>
    public Interval? Interval { get; }

    /// <summary>The confidence that the limits at whole ranks really have, from Kendall's distribution; ranks cannot hit every level in a short series. Null without an interval, where x repeats, between ranks, and from 50 points on. Equal y do not matter: at the true slope what is left of them differs.</summary>
    public double? AchievedConfidence { get; }

    /// <summary>Fits a line.</summary>
    /// <remarks>Assumes independent errors of one distribution about a straight line.</remarks>
    /// <param name="x">Explanatory series.</param>
    /// <param name="y">Response.</param>
    /// <param name="level">Confidence level of the slope's interval.</param>
    /// <param name="limits">How the limits are read off; rounded ranks by default.</param>
    /// <returns>The line, or a refusal with fewer than three points (<see cref="Refusal.TooFewObservations"/>), more than 3,000 (<see cref="Refusal.TooManyObservations"/>) or a constant series (<see cref="Refusal.ZeroVariance"/>).</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<TheilSen> Fit(IReadOnlyList<double> x, IReadOnlyList<double> y, ConfidenceLevel level, RankLimits limits = RankLimits.Rounded)
    {
        var (first, second) = (Numbers.Of(x, 0), Numbers.Of(y, 0));
        Numbers.SameLength(first, second, nameof(x), nameof(y));
        if (first.Length < 3) return new NotEstimable("the Theil-Sen slope", Refusal.TooFewObservations, 3, first.Length, "points");
        if (first.Length > MostPoints) return NotEstimable.TooMany("the Theil-Sen slope", MostPoints, first.Length, "points");
        var slopes = Slopes(first, second);
        if (slopes.Length == 0) return new NotEstimable("the Theil-Sen slope", Refusal.ZeroVariance, "points at different x", "all at the same");
        return KendallCorrelation.Fit(first, second).Match(
            kendall => Make(first, second, slopes, kendall, level, limits),
            _ => new NotEstimable("the Theil-Sen slope", Refusal.ZeroVariance, "responses that vary", "all the same"));
    }

    /// <summary>Slope and interval.</summary>
    public override string ToString() => FormattableString.Invariant($"Theil-Sen slope {Slope:G5}") + (Interval is { } interval ? $", {interval}" : "");

    private static Answer<TheilSen> Make(double[] x, double[] y, double[] slopes, KendallCorrelation kendall, ConfidenceLevel level, RankLimits limits)
    {
        var slope = Descriptive.MedianOfSorted(slopes);
        double[] rest = [.. y.Zip(x, (response, at) => response - slope * at)];
        var reach = NormalDistribution.UpperQuantile(level.Alpha / 2) * Math.Sqrt(kendall.VarianceOfS);
        var (low, high) = ((slopes.Length - reach) / 2, (slopes.Length + reach) / 2 + 1);
        if (limits == RankLimits.Rounded) (low, high) = (Math.Round(low), Math.Round(high - 1) + 1);
        Interval? interval = low >= 1 && high <= slopes.Length ? new Interval(AtRank(slopes, low), AtRank(slopes, high), level) : null;
        double? achieved = interval is not null && limits == RankLimits.Rounded && slopes.Length == x.Length * (x.Length - 1) / 2 && x.Length < KendallCorrelation.ExactBelow ? Achieved(x.Length, (int)low, (int)high) : null;
        return new TheilSen(slopes, Descriptive.Median(rest), Descriptive.Median(y) - slope * Descriptive.Median(x), kendall, interval, achieved);
    }

    // The true slope lies between the limits where at least low and fewer than high of the pairwise slopes are below it.
    private static double Achieved(int points, int low, int high)
    {
        var distribution = SumDistribution.OfConcordantPairs(points);
        return distribution.AtMost(high - 1) - distribution.AtMost(low - 1);
    }

    private static double[] Slopes(double[] x, double[] y)
    {
        var slopes = new List<double>(x.Length * (x.Length - 1) / 2);
        for (var i = 0; i < x.Length; i++)
        {
            for (var j = i + 1; j < x.Length; j++)
            {
                if (x[i] != x[j]) slopes.Add((y[j] - y[i]) / (x[j] - x[i]));
            }
        }

        slopes.Sort();
        return [.. slopes];
    }

    private static double AtRank(double[] sorted, double rank)
    {
        var below = (int)Math.Floor(rank);
        var (low, high) = (sorted[below - 1], sorted[Math.Min(below, sorted.Length - 1)]);
        return low + (rank - below) * (high - low);
    }
}
