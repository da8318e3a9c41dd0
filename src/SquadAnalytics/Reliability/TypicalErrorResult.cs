using System.Globalization;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reliability;

/// <summary>The typical error: the standard deviation of one athlete's repeated tests, with trends of whole tests removed.</summary>
public sealed record TypicalErrorResult
{
    /// <summary>The typical error in the unit of the measure, √MSE with chi-squared limits.</summary>
    public required Estimate Estimate { get; init; }

    /// <summary>The typical error as a coefficient of variation, in percent; refused where a value is not above 0 or none was computed.</summary>
    public required Answer<Estimate> Variation { get; init; }

    /// <summary>The measure.</summary>
    public required SessionMeasure Measure { get; init; }

    /// <summary>How many athletes contribute at least two tests to a window.</summary>
    public required int Athletes { get; init; }

    /// <summary>How many windows of consecutive tests were pooled.</summary>
    public required int Windows { get; init; }

    /// <summary>Id of the athlete with the largest share of the residual sum of squares, or null where the error was entered.</summary>
    public required string? LargestContributor { get; init; }

    /// <summary>That athlete's share of the residual sum of squares, or null.</summary>
    public required Percent? LargestContribution { get; init; }

    /// <summary>Degrees of freedom.</summary>
    public double DegreesOfFreedom => Estimate.DegreesOfFreedom!.Value;

    /// <summary>The typical error on the scale of natural logarithms, ln(1 + CV / 100).</summary>
    internal Answer<double> LogValue => Variation.Select(variation => Math.Log(1 + variation.Value / 100));

    /// <summary>The error, its degrees of freedom and how many athletes it rests on.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"Typical error of the {Measure.Words()}: {Estimate}; {Variation} ({Athletes} athletes, {DegreesOfFreedom:0.#} degrees of freedom)");
}
