using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>A coefficient of a linear model, or a contrast of coefficients, in the response's unit per unit of its column.</summary>
/// <param name="Name">Name of the column or of the contrast.</param>
/// <param name="Value">The estimate.</param>
/// <param name="StandardError">Its standard error.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of its t distribution.</param>
public sealed record RegressionCoefficient(string Name, double Value, double StandardError, double DegreesOfFreedom)
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

    /// <summary>Name, estimate and standard error, for example <c>slope 2.19 (SE 0.4449)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} {Value:G6} (SE {StandardError:G4})");
}
