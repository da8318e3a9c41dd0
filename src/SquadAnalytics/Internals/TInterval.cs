using SquadAnalytics.Statistics;

namespace SquadAnalytics.Internals;

/// <summary>Builds estimates with a t interval, in seconds or, from natural logarithms, in percent.</summary>
internal static class TInterval
{
    /// <summary>Mean of one value per session or athlete, with a one-sample t interval and a two-sided p-value against 0 where the values vary.</summary>
    public static Estimate OfMean(IReadOnlyList<double> values, Unit unit, ConfidenceLevel level, string method, Scale scale = Scale.Log, double choices = 1)
    {
        var standardError = Descriptive.StandardDeviation(values) / Math.Sqrt(values.Count);
        return Of(Descriptive.Mean(values), standardError, values.Count - 1, unit, level, values.Count, method, scale, choices);
    }

    /// <summary>An estimate with its standard error. In a percent unit both are taken as differences of natural logarithms, unless the scale
    /// says otherwise: value and limits become 100 (exp(b) - 1), the standard error 100 exp(b) SE (delta method). Where the estimate was picked
    /// among several, the limits hold for all of them together: α is divided by their number (Bonferroni), or by the number that they are worth (<see cref="Sets.EffectiveChoices"/>).</summary>
    public static Estimate Of(
        double value, double standardError, double degreesOfFreedom, Unit unit, ConfidenceLevel level, int observations, string method, Scale scale = Scale.Log, double choices = 1, double inflation = 1)
    {
        var reach = StudentTDistribution.UpperQuantile(level.Alpha / 2 / choices, degreesOfFreedom) * inflation * standardError;
        var percent = scale == Scale.Log && unit is Unit.Percent or Unit.PercentPerSet or Unit.PercentPerWeek;
        return new Estimate(percent ? Percent.FromLog(value).Value : value, unit, observations, method)
        {
            StandardError = percent ? 100 * Math.Exp(value) * standardError : standardError,
            Interval = percent
                ? new Interval(Percent.FromLog(value - reach).Value, Percent.FromLog(value + reach).Value, level)
                : new Interval(value - reach, value + reach, level),
            DegreesOfFreedom = degreesOfFreedom,
            PValue = standardError > 0 ? StudentTDistribution.TwoSidedPValue(value / (inflation * standardError), degreesOfFreedom) : null,
        };
    }

    /// <summary>A coefficient with its Newey-West standard error and limits that hold in a short series (<see cref="RobustCovariance.Reach"/>): limits and p-value inflate the standard error, which is given plain.</summary>
    public static Estimate OfSerial(LinearFit fit, int lag, string coefficient, Unit unit, ConfidenceLevel level, string method)
    {
        var standardError = RobustCovariance.NeweyWest(fit, lag).StandardErrors[fit.ColumnNames.ToList().IndexOf(coefficient)];
        var reach = RobustCovariance.Reach(fit, lag, coefficient);
        return Of(fit.Coefficient(coefficient).Value, standardError, reach.DegreesOfFreedom, unit, level, fit.Observations,
            FormattableString.Invariant($"{method}, Newey-West to lag {lag}, standard error and degrees of freedom adjusted"), inflation: reach.Inflation);
    }

    /// <summary>A standard deviation with chi-squared limits: s √(df / q(1 - α/2)) to s √(df / q(α/2)). For <see cref="Unit.Percent"/> s is on the log scale.</summary>
    public static Estimate OfStandardDeviation(double deviation, double degreesOfFreedom, Unit unit, ConfidenceLevel level, int observations, string method, Scale scale = Scale.Log)
    {
        var lower = deviation * Math.Sqrt(degreesOfFreedom / ChiSquaredDistribution.UpperQuantile(level.Alpha / 2, degreesOfFreedom));
        var upper = deviation * Math.Sqrt(degreesOfFreedom / ChiSquaredDistribution.Quantile(level.Alpha / 2, degreesOfFreedom));
        var percent = scale == Scale.Log && unit == Unit.Percent;
        double Show(double s) => percent ? Percent.FromLog(s).Value : s;
        return new Estimate(Show(deviation), unit, observations, method)
        {
            StandardError = (percent ? 100 * Math.Exp(deviation) : 1) * deviation / Math.Sqrt(2 * degreesOfFreedom),
            Interval = new Interval(Show(lower), Show(upper), level),
            DegreesOfFreedom = degreesOfFreedom,
        };
    }
}
