namespace SquadAnalytics.Internals;

/// <summary>Mean and spread of a small sample, by two passes so that a large mean does not swallow a small spread.</summary>
internal static class Sample
{
    public static double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (var value in values) sum += value;
        var mean = sum / values.Length;
        double correction = 0;
        foreach (var value in values) correction += value - mean;
        return mean + correction / values.Length;
    }

    /// <summary>Sum of squared deviations from the mean, corrected for the rounding of the mean.</summary>
    public static double SumOfSquares(ReadOnlySpan<double> values)
    {
        var mean = Mean(values);
        double squares = 0, sum = 0;
        foreach (var value in values)
        {
            squares += (value - mean) * (value - mean);
            sum += value - mean;
        }

        return Math.Max(0, squares - sum * sum / values.Length);
    }

    /// <summary>Standard deviation with n - 1.</summary>
    public static double StandardDeviation(ReadOnlySpan<double> values) => Math.Sqrt(SumOfSquares(values) / (values.Length - 1));

    public static double Median(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    public static double[] Log(IEnumerable<double> seconds) => [.. seconds.Select(time => Math.Log(time))];
}
