using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>A number estimated with an error that follows Student's t: a mean, a difference, a coefficient, a contrast.</summary>
/// <remarks>Interval value ± q_t SE, p-values from value / SE. Assumes a normal estimate with an independent χ² error. Source: Student (1908), Biometrika 6:1-25 (from memory).</remarks>
/// <param name="Name">What it is, for example the name of a coefficient's column.</param>
/// <param name="Value">The estimate, in the data's unit.</param>
/// <param name="StandardError">Its standard error, in the same unit.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the t distribution; need not be whole.</param>
public sealed record TEstimate(string Name, double Value, double StandardError, double DegreesOfFreedom)
{
    /// <summary>Estimate divided by standard error, or null where the standard error is 0.</summary>
    public double? T => StandardError == 0 ? null : Value / StandardError;

    /// <summary>Two-sided p-value of the hypothesis that the true value is 0, or null where the standard error is 0.</summary>
    public double? PValue => T is { } t ? StudentTDistribution.TwoSidedPValue(t, DegreesOfFreedom) : null;

    /// <summary>Two-sided t interval.</summary>
    public Interval Interval(ConfidenceLevel level)
    {
        var halfWidth = StudentTDistribution.TwoSidedFactor(level, DegreesOfFreedom) * StandardError;
        return new Interval(Value - halfWidth, Value + halfWidth, level);
    }

    /// <summary>One-sided p-value of the hypothesis that the true value is not above a bound; null where the standard error is 0.</summary>
    public double? PValueAbove(double bound) => StandardError == 0 ? null : StudentTDistribution.UpperTail((Value - bound) / StandardError, DegreesOfFreedom);

    /// <summary>One-sided p-value of the hypothesis that the true value is not below a bound; null where the standard error is 0.</summary>
    public double? PValueBelow(double bound) => StandardError == 0 ? null : StudentTDistribution.Cdf((Value - bound) / StandardError, DegreesOfFreedom);

    /// <summary>Name, estimate and standard error, for example <c>slope 2.19 (SE 0.4449)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} {Value:G6} (SE {StandardError:G4})");
}
