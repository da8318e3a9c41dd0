using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Weights of the late and the kink contrast, and the sign-flip reference of their largest t statistic.</summary>
internal static class Contrasts
{
    /// <summary>Weights w of c = Σ w_k y_k: -1/b for the first b sets, 1/(n - b) for the others.</summary>
    public static double[] Late(int sets, int after) => [.. Enumerable.Range(1, sets).Select(k => k <= after ? -1.0 / after : 1.0 / (sets - after))];

    /// <summary>Weights of κ = c - (n/2) β̂ with β̂ the least-squares slope; under a straight line E c = (n/2) β for every b.</summary>
    public static double[] Kink(int sets, int after)
    {
        var centre = (sets + 1) / 2.0;
        var squares = sets * ((double)sets * sets - 1) / 12;
        return [.. Late(sets, after).Select((weight, index) => weight - sets / 2.0 * (index + 1 - centre) / squares)];
    }

    public static double Apply(double[] weights, double[] profile)
    {
        double sum = 0;
        for (var k = 0; k < weights.Length; k++) sum += weights[k] * profile[k];
        return sum;
    }

    /// <summary>One-sample t statistic; plus or minus infinity where the values do not vary.</summary>
    public static double TStatistic(double[] values)
    {
        var mean = Descriptive.Mean(values);
        return mean / (Descriptive.StandardDeviation(values) / Math.Sqrt(values.Length));
    }

    /// <summary>
    /// Share of sign flips whose largest t over b reaches the observed statistic: all 2^m flips up to 12 sessions, otherwise 9 999
    /// random ones beside the observed signs.
    /// </summary>
    /// <param name="values">One row per b: the contrast of each session.</param>
    /// <param name="observed">The observed statistic.</param>
    /// <param name="seed">Seed of the random flips.</param>
    public static double SignFlipPValue(double[][] values, double observed, int seed)
    {
        const int exhaustive = 12, draws = 9_999;
        var m = values[0].Length;
        var random = new SeededRandom(seed);
        var all = m <= exhaustive;
        var flips = all ? 1 << m : draws;
        var signs = new double[m];
        var reached = all ? 0 : 1;
        for (var flip = 0; flip < flips; flip++)
        {
            for (var s = 0; s < m; s++) signs[s] = all ? 1 - 2 * (flip >> s & 1) : random.NextSign();
            // A flip that equals the observed signs must count in spite of rounding.
            if (LargestT(values, signs) >= observed - 1e-9 * Math.Abs(observed)) reached++;
        }

        return (double)reached / (all ? flips : draws + 1);
    }

    private static double LargestT(double[][] values, double[] signs)
    {
        // t increases with mean / √(Σ x²), and Σ x² does not change with signs: t = r √((m-1)/(1-r²)) with r = Σ x / √(m Σ x²).
        var largest = double.NegativeInfinity;
        foreach (var row in values)
        {
            double sum = 0, squares = 0;
            for (var s = 0; s < row.Length; s++)
            {
                sum += signs[s] * row[s];
                squares += row[s] * row[s];
            }

            if (squares == 0) continue;
            var r = sum / Math.Sqrt(row.Length * squares);
            largest = Math.Max(largest, r * Math.Sqrt((row.Length - 1) / Math.Max(1e-300, 1 - r * r)));
        }

        return largest;
    }
}
