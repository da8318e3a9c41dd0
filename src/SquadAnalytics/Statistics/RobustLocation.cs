using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Centres and spreads of a sample that a few odd numbers hardly move; in the sample's own unit.</summary>
public static class RobustLocation
{
    private const int MostSteps = 1_000;
    private const double Precision = 1e-14;

    /// <summary>Mean of what is left after cutting off the share <paramref name="fraction"/> of the numbers (rounded down) at each end.</summary>
    /// <remarks>Assumes independent values. Source: Tukey (1962), Ann Math Stat 33:1-67 (from memory).</remarks>
    /// <exception cref="ArgumentException">There is no number, one is not finite, or the fraction is outside 0 to below ½.</exception>
    public static double TrimmedMean(IReadOnlyList<double> values, double fraction)
    {
        if (!(fraction >= 0 && fraction < 0.5)) throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "The trimmed fraction lies between 0 and below 0.5.");
        var sorted = Numbers.Sorted(Numbers.Of(values));
        var cut = (int)Math.Floor(sorted.Length * fraction);
        return Descriptive.MeanOf(sorted.AsSpan(cut, sorted.Length - 2 * cut));
    }

    /// <summary>Huber's M-estimate of the centre with the scale held at the median absolute deviation: numbers beyond k scales count as k scales.</summary>
    /// <remarks>Assumes independent values, symmetric but for a few odd ones. Huber (1964), Ann Math Stat 35:73-101 (from memory; checked against MASS::huber in R 4.2.2).</remarks>
    /// <param name="values">The sample.</param>
    /// <param name="k">Where the numbers are pulled in, in scales; 1.5 by default.</param>
    /// <returns>Centre and scale, or <see cref="Refusal.ZeroVariance"/> where more than half of the numbers are equal, or <see cref="Refusal.NotConverged"/> after 1,000 steps.</returns>
    /// <exception cref="ArgumentException">There is no number, one is not finite, or k is not above 0.</exception>
    public static Answer<LocationAndScale> Huber(IReadOnlyList<double> values, double k = 1.5)
    {
        var sample = Numbers.Of(values);
        Require.Positive(k);
        var scale = Descriptive.MedianAbsoluteDeviation(sample);
        if (scale == 0) return new NotEstimable("Huber's centre", Refusal.ZeroVariance, "numbers of which no more than half are equal", "a median absolute deviation of 0");
        return Iterate(sample, new LocationAndScale(Descriptive.Median(sample), scale), current => current with { Location = Winsorized(sample, current, k).Mean });
    }

    /// <summary>Huber's proposal 2: centre and scale estimated together.</summary>
    /// <remarks>Assumes independent values, normal but for a few odd ones. Huber (1981), Robust statistics (from memory; checked against MASS::hubers in R 4.2.2).</remarks>
    /// <param name="values">The sample.</param>
    /// <param name="k">Where the numbers are pulled in, in scales; 1.5 by default.</param>
    /// <returns>Centre and scale, or <see cref="Refusal.ZeroVariance"/> where more than half of the numbers are equal, or <see cref="Refusal.NotConverged"/> after 1,000 steps.</returns>
    /// <exception cref="ArgumentException">There are fewer than two numbers, one is not finite, or k is not above 0.</exception>
    public static Answer<LocationAndScale> HuberProposal2(IReadOnlyList<double> values, double k = 1.5)
    {
        var sample = Numbers.Of(values, 2);
        Require.Positive(k);
        var scale = Descriptive.MedianAbsoluteDeviation(sample);
        if (scale == 0) return new NotEstimable("Huber's centre and scale", Refusal.ZeroVariance, "numbers of which no more than half are equal", "a median absolute deviation of 0");
        var within = 2 * NormalDistribution.Cdf(k) - 1;
        var consistency = within + k * k * (1 - within) - 2 * k * NormalDistribution.Density(k);
        return Iterate(sample, new LocationAndScale(Descriptive.Median(sample), scale), current =>
        {
            var (mean, squares) = Winsorized(sample, current, k);
            return new LocationAndScale(mean, Math.Sqrt(squares / (sample.Length - 1) / consistency));
        });
    }

    private static (double Mean, double SumOfSquares) Winsorized(double[] sample, LocationAndScale centre, double k)
    {
        var pulled = Array.ConvertAll(sample, value => Math.Clamp(value, centre.Location - k * centre.Scale, centre.Location + k * centre.Scale));
        return (Descriptive.MeanOf(pulled), Descriptive.SumOfSquares(pulled));
    }

    private static Answer<LocationAndScale> Iterate(double[] sample, LocationAndScale start, Func<LocationAndScale, LocationAndScale> step)
    {
        var current = start;
        for (var round = 0; round < MostSteps; round++)
        {
            var next = step(current);
            var move = Math.Abs(next.Location - current.Location) + Math.Abs(next.Scale - current.Scale);
            if (move <= Precision * (next.Scale + Math.Abs(next.Location))) return next;
            current = next;
        }

        return new NotEstimable("Huber's centre", Refusal.NotConverged, "an iteration that settles", FormattableString.Invariant($"none after {MostSteps} steps on {sample.Length} numbers"));
    }
}
