using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Theil-Sen line: median pairwise slope, median residual as intercept.</summary>
internal readonly record struct RobustLine(double Slope, double Intercept)
{
    public static RobustLine Fit(double[] x, double[] y)
    {
        var slopes = new List<double>(x.Length * (x.Length - 1) / 2);
        for (var k = 0; k < x.Length; k++)
        {
            for (var l = k + 1; l < x.Length; l++) slopes.Add((y[l] - y[k]) / (x[l] - x[k]));
        }

        var slope = Descriptive.Median(slopes.ToArray());
        return new RobustLine(slope, Descriptive.Median([.. x.Zip(y, (set, time) => time - slope * set)]));
    }
}
