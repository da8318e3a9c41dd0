using System.Globalization;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>The smallest change between two single tests that noise alone rarely produces.</summary>
public static class MinimalDetectableChange
{
    /// <summary>Computes the minimal detectable change of one athlete between two single tests.</summary>
    /// <remarks>MDC = q √2 TE, TE the typical error and q a quantile at (1 + level) / 2. It answers "is it noise?", not "does it matter?": for that see the
    /// smallest worthwhile change. Unit: that of the typical error.
    /// Assumes two single tests with the same normal noise. Source: Hopkins 2000, Sports Med 30:1-15.</remarks>
    public static Estimate Fit(TypicalErrorResult typicalError, MinimalDetectableChangeOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        options ??= new MinimalDetectableChangeOptions();
        var tail = options.Level.Alpha / 2;
        var q = options.Factor switch
        {
            DetectionFactor.StudentT => StudentTDistribution.UpperQuantile(tail, typicalError.DegreesOfFreedom),
            DetectionFactor.Conventional when options.Level == ConfidenceLevel.NinetyFive => 1.96,
            DetectionFactor.Conventional when options.Level == ConfidenceLevel.Ninety => 1.645,
            _ => NormalDistribution.UpperQuantile(tail),
        };
        return new Estimate(q * Math.Sqrt(2) * typicalError.Estimate.Value, typicalError.Estimate.Unit, typicalError.Estimate.Observations,
            string.Create(CultureInfo.InvariantCulture, $"{q:0.000} √2 typical error, {options.Level}, {options.Factor}"))
        {
            DegreesOfFreedom = typicalError.DegreesOfFreedom,
            Notes = ["Answers whether a change is noise, not whether it matters."],
        };
    }
}
