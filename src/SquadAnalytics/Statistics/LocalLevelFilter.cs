namespace SquadAnalytics.Statistics;

/// <summary>Kalman filter of the local level for one split of the variance: a share r is drift, 1 - r is noise; the scale is estimated.</summary>
internal sealed class LocalLevelFilter
{
    private const int GridSteps = 120;
    private const double Golden = 0.6180339887498949;

    private readonly double[] _level;
    private readonly double[] _variance;

    /// <param name="values">One value for each time, null where there is none; the first is observed.</param>
    /// <param name="driftShare">The share r of the drift.</param>
    public LocalLevelFilter(IReadOnlyList<double?> values, double driftShare)
    {
        DriftShare = driftShare;
        (_level, _variance) = (new double[values.Count], new double[values.Count]);
        (_level[0], _variance[0]) = (values[0]!.Value, 1 - driftShare);
        var (squares, logs, innovations) = (new CompensatedSum(), new CompensatedSum(), 0);
        for (var t = 1; t < values.Count; t++)
        {
            var (level, variance) = (_level[t - 1], _variance[t - 1] + driftShare);
            if (values[t] is { } value)
            {
                var (innovation, total) = (value - level, variance + 1 - driftShare);
                squares.Add(innovation * innovation / total);
                logs.Add(Math.Log(total));
                innovations++;
                level += variance / total * innovation;
                variance *= (1 - driftShare) / total;
            }

            (_level[t], _variance[t]) = (level, variance);
        }

        Scale = squares.Value / innovations;
        LogLikelihood = -0.5 * (innovations * (Math.Log(Math.Tau * Scale) + 1) + logs.Value);
    }

    /// <summary>Share of the drift in the sum of both variances, from 0 to 1.</summary>
    public double DriftShare { get; }

    /// <summary>Sum of both variances at their most likely.</summary>
    public double Scale { get; }

    /// <summary>Log-likelihood at that scale.</summary>
    public double LogLikelihood { get; }

    /// <summary>The filter at the most likely split, both ends included.</summary>
    public static LocalLevelFilter MostLikely(IReadOnlyList<double?> values)
    {
        LocalLevelFilter At(double logOdds) => new(values, 1 / (1 + Math.Exp(-logOdds)));
        var grid = Enumerable.Range(0, GridSteps + 1).Select(i => -18 + 36.0 * i / GridSteps).ToArray();
        var best = grid.MaxBy(logOdds => At(logOdds).LogLikelihood);
        var step = 36.0 / GridSteps;
        var (low, high) = (best - step, best + step);
        while (high - low > 1e-9)
        {
            var (left, right) = (high - Golden * (high - low), low + Golden * (high - low));
            if (At(left).LogLikelihood < At(right).LogLikelihood) low = left;
            else high = right;
        }

        // An end wins where going further in does not raise the likelihood by more than rounding.
        var inside = At((low + high) / 2);
        LocalLevelFilter[] ends = [new(values, 0), new(values, 1)];
        var end = ends.MaxBy(filter => filter.LogLikelihood)!;
        return end.LogLikelihood >= inside.LogLikelihood - 1e-9 ? end : inside;
    }

    /// <summary>Filtered and smoothed levels with their standard errors.</summary>
    public LocalLevelPoint[] Smooth()
    {
        var points = new LocalLevelPoint[_level.Length];
        var (level, variance) = (_level[^1], _variance[^1]);
        for (var t = _level.Length - 1; t >= 0; t--)
        {
            if (t < _level.Length - 1)
            {
                var predicted = _variance[t] + DriftShare;
                var gain = predicted > 0 ? _variance[t] / predicted : 1;
                level = _level[t] + gain * (level - _level[t]);
                variance = _variance[t] + gain * gain * (variance - predicted);
            }

            points[t] = new LocalLevelPoint(_level[t], Math.Sqrt(Scale * _variance[t]), level, Math.Sqrt(Scale * Math.Max(0, variance)));
        }

        return points;
    }
}
