namespace SquadAnalytics.Statistics;

/// <summary>Finds where the mean of a series shifts: the best places for one break, two breaks and so on, by exhaustive search.</summary>
/// <remarks>
/// For each number of breaks the cut with the smallest sum of squares about the segment means is found by dynamic programming over all cuts. BIC and AIC
/// count the means, the breaks and the residual variance: 2(m + 1) parameters for m breaks. The limits of a break use the distribution of the argmax of
/// a two-sided Brownian motion with drift, each side with its own residual variance. Assumes independent errors within a segment; a steady trend also
/// produces breaks, so test and plot before believing one. Time and memory grow with the square of the number of observations: at most 5,000. Sources: Bai and Perron (2003), J Appl Econometrics 18:1-22; Bai (1997), Rev Econ Stat
/// 79:551-563; Zeileis et al. (2003), Comput Stat Data Anal 44:109-123 (all from memory).
/// </remarks>
public static class MeanShifts
{
    private const string Measure = "the breaks of the mean";

    // The search holds a cost for every run of observations: 100 MB at this length.
    private const int LongestSeries = 5_000;

    /// <summary>Searches for breaks.</summary>
    /// <param name="values">The series in order of time.</param>
    /// <param name="options">Settings; by default up to 5 breaks, segments of 15 % or more, 90 % limits.</param>
    /// <returns>The models, or <see cref="NotEstimable"/> where the series is shorter than two smallest segments (<see cref="Refusal.TooFewObservations"/>), does not vary (<see cref="Refusal.ZeroVariance"/>) or is longer than 5,000 (<see cref="Refusal.TooManyObservations"/>).</returns>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public static Answer<MeanShiftFit> Find(IReadOnlyList<double> values, MeanShiftOptions? options = null)
    {
        options ??= new MeanShiftOptions();
        var series = Numbers.Of(values, 0);
        var n = series.Length;
        if (n > LongestSeries) return NotEstimable.TooMany(Measure, LongestSeries, n, "observations");
        var smallest = Math.Max(2, (int)Math.Floor(options.SmallestShare * n + 1e-9));
        if (n < 2 * smallest) return new NotEstimable(Measure, Refusal.TooFewObservations, 2 * smallest, n, "observations");
        if (series.All(value => value == series[0])) return new NotEstimable(Measure, Refusal.ZeroVariance, "a series that varies", "equal values");
        var cuts = BestCuts(RunCosts(series), smallest, Math.Min(options.MaximumBreaks, n / smallest - 1));
        var models = cuts.Select(cut => Model(series, cut, options.ConfidenceLevel)).ToArray();

        // A perfect fit has no criterion; fewer breaks win where they fit perfectly too.
        var selected = models.FirstOrDefault(model => model.Bic is null) ?? models.MinBy(model => model.Bic)!;
        return new MeanShiftFit(models, selected, smallest);
    }

    /// <summary>The sum of squares for a break after each observation in turn, from the first to the last but one.</summary>
    /// <param name="values">The series in order of time; two or more numbers.</param>
    /// <exception cref="ArgumentException">Fewer than two numbers, or one that is not finite.</exception>
    public static IReadOnlyList<double> OneBreakSumsOfSquares(IReadOnlyList<double> values)
    {
        var series = Numbers.Of(values, 2);
        var before = RunningSums(series);
        Array.Reverse(series = [.. series]);
        var behind = RunningSums(series);
        return [.. Enumerable.Range(1, series.Length - 1).Select(after => before[after - 1] + behind[series.Length - after - 1])];
    }

    internal static double SumOfSquares(ReadOnlySpan<double> values) => RunningSums(values)[^1];

    /// <summary>Sum of squares about the mean of the first one, two, ... numbers, by updating the mean (Welford 1962, Technometrics 4:419-420, from memory).</summary>
    private static double[] RunningSums(ReadOnlySpan<double> values)
    {
        var sums = new double[values.Length];
        double mean = 0, squares = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var deviation = values[i] - mean;
            mean += deviation / (i + 1);
            squares += deviation * (values[i] - mean);
            sums[i] = squares;
        }

        return sums;
    }

    /// <summary>Sum of squares about the mean of every run: first index its start, second its length less 1.</summary>
    private static double[][] RunCosts(double[] series) => [.. Enumerable.Range(0, series.Length).Select(start => RunningSums(series.AsSpan(start)))];

    /// <summary>The best breaks (counts of observations before each) for 0, 1, ... breaks.</summary>
    private static List<int[]> BestCuts(double[][] costs, int smallest, int most)
    {
        var n = costs.Length;
        var total = new double[most + 1][];
        var last = new int[most + 1][];
        total[0] = costs[0];
        for (var m = 1; m <= most; m++)
        {
            total[m] = new double[n];
            last[m] = new int[n];
            Array.Fill(total[m], double.PositiveInfinity);
            for (var end = (m + 1) * smallest - 1; end < n; end++)
            {
                for (var before = m * smallest; before <= end + 1 - smallest; before++)
                {
                    var sum = total[m - 1][before - 1] + costs[before][end - before];
                    if (sum < total[m][end]) (total[m][end], last[m][end]) = (sum, before);
                }
            }
        }

        var cuts = new List<int[]> { Array.Empty<int>() };
        for (var m = 1; m <= most; m++)
        {
            var cut = new int[m];
            var end = n - 1;
            for (var k = m; k >= 1; k--)
            {
                cut[k - 1] = last[k][end];
                end = cut[k - 1] - 1;
            }

            cuts.Add(cut);
        }

        return cuts;
    }

    private static MeanShiftModel Model(double[] series, int[] cut, ConfidenceLevel level)
    {
        var n = series.Length;
        int[] edges = [0, .. cut, n];
        var means = new double[cut.Length + 1];
        var variances = new double[cut.Length + 1];
        var rss = 0.0;
        for (var s = 0; s < means.Length; s++)
        {
            var segment = series[edges[s]..edges[s + 1]];
            means[s] = Descriptive.Mean(segment);
            var squares = SumOfSquares(segment);
            variances[s] = squares / segment.Length;
            rss += squares;
        }

        var breaks = cut.Select((after, k) => Place(after, n, means[k + 1] - means[k], variances[k], variances[k + 1], level)).ToArray();
        var likelihood = InformationCriteria.LogLikelihood(n, rss);
        var parameters = 2 * means.Length;
        return new MeanShiftModel(breaks, means, rss, 2.0 * parameters - 2 * likelihood, Math.Log(n) * parameters - 2 * likelihood);
    }

    private static BreakPlace Place(int after, int n, double shift, double before, double behind, ConfidenceLevel level)
    {
        // Without scatter on a side the place is known from that side.
        var unit = before / (shift * shift);
        if (!(before > 0) || !(behind > 0) || !double.IsFinite(unit)) return new BreakPlace(after, after, after, level);
        var distribution = new BreakPlaceDistribution(behind / before);

        // The distribution is that of the found place less the true one, so its upper quantile gives the lower limit.
        var lower = Math.Floor(-distribution.Quantile(level.UpperTailProbability) * unit);
        var upper = Math.Ceiling(-distribution.Quantile(1 - level.UpperTailProbability) * unit);
        return new BreakPlace(after, (int)Math.Clamp(after + lower, 1, n), (int)Math.Clamp(after + upper, 1, n), level);
    }
}
