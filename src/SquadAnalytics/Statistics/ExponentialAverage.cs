using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Exponentially weighted moving average: z_t = λ y_t + (1 - λ) z_(t-1).</summary>
/// <remarks>Roberts (1959), Technometrics 1:239-250 (from memory). In the unit of the series. A descriptive line that assumes nothing; it lags behind every change.</remarks>
public static class ExponentialAverage
{
    /// <summary>The averages.</summary>
    /// <param name="values">The series in time order.</param>
    /// <param name="lambda">λ, above 0 and at most 1: the weight of a new value one step after the last.</param>
    /// <param name="start">z before the first value, or null to start at the first value.</param>
    /// <param name="gaps">Steps since the value before (the first is ignored without a start), or null for 1 throughout; after g steps the weight is 1 - (1 - λ)^g.</param>
    /// <exception cref="ArgumentException">There is no value, one is not finite, λ is out of range, or the gaps have another length or are not above 0.</exception>
    public static IReadOnlyList<double> Smooth(IReadOnlyList<double> values, double lambda, double? start = null, IReadOnlyList<double>? gaps = null)
    {
        var y = Numbers.Of(values);
        var steps = gaps is null ? null : Numbers.Of(gaps);
        if (steps is not null) Numbers.SameLength(y, steps, nameof(values), nameof(gaps));
        Weight(lambda);
        var averages = new double[y.Length];
        var last = start ?? y[0];
        for (var t = 0; t < y.Length; t++)
        {
            var weight = steps is null || (t == 0 && start is null) ? lambda : -Elementary.ExpMinusOne(Require.Positive(steps[t], nameof(gaps)) * Math.Log(1 - lambda));
            last += weight * (y[t] - last);
            averages[t] = last;
        }

        return averages;
    }

    /// <summary>Limits centre ± w σ √(λ/(2 - λ) (1 - (1 - λ)^(2t))) at t = 1, 2, ...</summary>
    /// <param name="centre">Mean of the stable series, the start of the average.</param>
    /// <param name="sigma">Its standard deviation.</param>
    /// <param name="lambda">λ, above 0 and at most 1.</param>
    /// <param name="count">How many times.</param>
    /// <param name="width">w, in standard deviations of the average; 3 by default.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static IReadOnlyList<ControlLimits> Limits(double centre, double sigma, double lambda, int count, double width = 3)
    {
        Require.Finite(centre);
        Weight(lambda);
        var reach = Require.Positive(width) * Require.Positive(sigma);
        ControlLimits At(int t)
        {
            var half = reach * Math.Sqrt(lambda / (2 - lambda) * (1 - Math.Pow(1 - lambda, 2.0 * t)));
            return new ControlLimits(centre - half, centre + half);
        }

        return [.. Enumerable.Range(1, Require.AtLeast(0, count)).Select(At)];
    }

    private static void Weight(double lambda)
    {
        if (!(lambda > 0 && lambda <= 1)) throw new ArgumentOutOfRangeException(nameof(lambda), lambda, "lambda lies above 0 and is at most 1.");
    }
}
