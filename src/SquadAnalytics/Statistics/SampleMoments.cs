namespace SquadAnalytics.Statistics;

/// <summary>Count, mean and variance (n - 1) of a sample of two or more.</summary>
internal readonly record struct SampleMoments(int Count, double Mean, double Variance)
{
    public double StandardDeviation => Math.Sqrt(Variance);

    public static SampleMoments Of(IReadOnlyList<double> values)
    {
        var sample = Numbers.Of(values, 2);
        return new SampleMoments(sample.Length, Descriptive.MeanOf(sample), Descriptive.SumOfSquares(sample) / (sample.Length - 1));
    }

    public static double PooledVariance(SampleMoments first, SampleMoments second) =>
        ((first.Count - 1) * first.Variance + (second.Count - 1) * second.Variance) / (first.Count + second.Count - 2);
}
