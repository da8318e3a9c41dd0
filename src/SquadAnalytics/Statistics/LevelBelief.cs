namespace SquadAnalytics.Statistics;

/// <summary>What is known of a drifting level when neither the noise nor the drift is: a weighted sum of t distributions, one for each split of the variance.</summary>
/// <remarks>Given the split, the scale has a flat prior on its logarithm, so that a level has a t distribution with one degree of freedom less than observations. Harvey 1989, Forecasting, structural
/// time series models and the Kalman filter, for the filter (from memory); the average over splits is Bayes's rule on a grid.</remarks>
internal sealed class LevelBelief
{
    private const int Splits = 48;
    private readonly (double Belief, LocalLevelPoint[] Points)[] _splits;
    private readonly int _df;

    public LevelBelief(IReadOnlyList<double?> values)
    {
        _splits = [.. LocalLevelFilter.Splits(values, Splits).Where(split => split.Belief > 1e-7).Select(split => (split.Belief, split.Filter.Smooth()))];
        _df = values.Count(value => value is not null) - 1;
    }

    /// <summary>Limits of the level of one week: from the tests up to it, or from all.</summary>
    public Interval Limits(int week, bool inHindsight, ConfidenceLevel level)
    {
        double Centre(LocalLevelPoint point) => inHindsight ? point.Smoothed : point.Filtered;
        double Error(LocalLevelPoint point) => inHindsight ? point.SmoothedStandardError : point.FilteredStandardError;
        double Below(double value) => _splits.Sum(split => split.Belief * StudentTDistribution.Cdf((value - Centre(split.Points[week])) / Error(split.Points[week]), _df));
        double start = _splits.Sum(split => split.Belief * Centre(split.Points[week])), step = _splits.Max(split => Error(split.Points[week]));
        double At(double probability) => BracketedRoot.FindRising(value => Below(value) - probability, start, step, 1e-7 * step);
        return new Interval(At(level.Alpha / 2), At(level.UpperTailProbability), level);
    }
}
