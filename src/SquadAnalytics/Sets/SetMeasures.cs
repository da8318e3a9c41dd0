using SquadAnalytics.Internals;

namespace SquadAnalytics.Sets;

/// <summary>The numeric kernel of the per-session measures: one pass over the work times of one session, in set order.</summary>
internal readonly record struct SetMeasures(
    double Total,
    double Mean,
    double Best,
    double Worst,
    double StandardDeviation,
    double CoefficientOfVariation,
    double LastToFirst,
    double Decrement,
    double Slope)
{
    /// <summary>Computes all measures. With one set the spread is 0 and meaningless, with one set the slope too; callers refuse those.</summary>
    public static SetMeasures Of(ReadOnlySpan<double> timesSeconds)
    {
        // Sums are taken of differences from the first set: exact for times of a similar size, and a small spread survives a large mean.
        var n = timesSeconds.Length;
        var first = timesSeconds[0];
        double best = first, worst = first, sum = 0, squares = 0, tilted = 0;
        for (var k = 1; k < n; k++)
        {
            var time = timesSeconds[k];
            var difference = time - first;
            best = Math.Min(best, time);
            worst = Math.Max(worst, time);
            sum += difference;
            squares += difference * difference;
            tilted += k * difference;
        }

        var meanDifference = sum / n;
        var total = n * first + sum;
        var mean = first + meanDifference;
        var deviation = n > 1 ? Math.Sqrt(Math.Max(0, squares - sum * meanDifference) / (n - 1)) : 0;
        var slope = n > 1 ? (tilted - (n - 1) / 2.0 * sum) * 12 / ((double)n * n * n - n) : 0;
        return new SetMeasures(total, mean, best, worst, deviation, 100 * deviation / mean, timesSeconds[n - 1] / first, 100 * (total / (n * best) - 1), slope);
    }
}
