namespace SquadAnalytics.Statistics;

/// <summary>What is known of a drifting level when neither the noise nor the drift is: a weighted sum of t distributions, one for each split of the variance.</summary>
/// <remarks>
/// A share r of the variance is drift, 1 - r noise. Beforehand r has the density 12 r (1 - r)², 0 at both ends and highest at one third, and the scale is flat on its logarithm; Bayes's rule on a grid of
/// the angle θ with r = sin² θ, which is finest where one of the two is small.
/// Given r a level has a t distribution with one degree of freedom less than observations (Harvey 1989, Forecasting, structural time series models and the Kalman filter, for the filter, from memory).
/// The density was chosen by simulation: one that stays off the ends, as is advised where variances are often estimated at 0 (Chung et al. 2013, Psychometrika 78:685-709, from memory), and whose
/// intervals hold what they say from no drift to a drift of twice the noise. Flat on r, 90 % intervals hold 87 to 88 of 100 where the drift of a week is 0.5 to 1 times the noise. Without any drift
/// they hold more than they say, 94 with 40 weeks: among 132 densities, with and without a share at r = 0, and 320 ways to lower the level by how little drift is believed, the best was still 4 points off somewhere from no drift to one as large as the noise.
/// </remarks>
internal sealed class LevelBelief
{
    private const int Splits = 24;

    private readonly (double Weight, LocalLevelPoint[] Points)[] _splits;
    private readonly int _df;

    /// <param name="values">One value for each time, null where there is none; the first is observed.</param>
    public LevelBelief(IReadOnlyList<double?> values)
    {
        LocalLevelFilter[] filters = [.. Enumerable.Range(0, Splits).Select(split => new LocalLevelFilter(values, Math.Pow(Math.Sin(Math.PI / 2 * (split + 0.5) / Splits), 2)))];
        double[] logs = [.. filters.Select(filter => LogPrior(filter.DriftShare) + filter.LogLikelihood)];
        double[] weights = [.. logs.Select(log => Math.Exp(log - logs.Max()))];
        _splits = [.. filters.Select((filter, split) => (weights[split] / weights.Sum(), filter.Smooth()))];
        _df = values.Count(value => value is not null) - 1;
    }

    /// <summary>The level of one time, from the values up to it.</summary>
    public TMixture At(int time) => Level(time, point => (point.Filtered, point.FilteredStandardError));

    /// <summary>The level of one time, from all values.</summary>
    public TMixture InHindsight(int time) => Level(time, point => (point.Smoothed, point.SmoothedStandardError));

    private TMixture Level(int time, Func<LocalLevelPoint, (double Centre, double Scale)> of) => new(
        _splits.Select(split =>
        {
            var (centre, scale) = of(split.Points[time]);
            return new TMixture.Part(split.Weight, centre, scale);
        }),
        _df);

    /// <summary>Logarithm of the density of θ beforehand up to a constant: r (1 - r)² times dr/dθ = 2 √(r (1 - r)).</summary>
    private static double LogPrior(double driftShare) => 1.5 * Math.Log(driftShare) + 2.5 * Math.Log(1 - driftShare);
}
