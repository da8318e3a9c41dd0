using SquadAnalytics.Statistics;

namespace SquadAnalytics.Internals;

/// <summary>Least-squares line through points, from centred values: b = Σ (x - x̄)(y - ȳ) / Σ (x - x̄)².</summary>
internal readonly record struct StraightLine(double Slope, double Intercept, double StandardError, double ResidualDeviation)
{
    public static StraightLine Fit(double[] x, double[] y)
    {
        double meanX = Descriptive.Mean(x), meanY = Descriptive.Mean(y), products = 0;
        var squares = (x.Length - 1) * Descriptive.Variance(x);
        for (var i = 0; i < x.Length; i++) products += (x[i] - meanX) * (y[i] - meanY);
        var slope = products / squares;
        double residual = 0;
        for (var i = 0; i < x.Length; i++)
        {
            var error = y[i] - meanY - slope * (x[i] - meanX);
            residual += error * error;
        }

        var deviation = x.Length > 2 ? Math.Sqrt(residual / (x.Length - 2)) : 0;
        return new StraightLine(slope, meanY - slope * meanX, deviation / Math.Sqrt(squares), deviation);
    }
}
