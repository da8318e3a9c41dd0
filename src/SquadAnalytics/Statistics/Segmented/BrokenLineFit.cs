using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>A continuous line with one bend.</summary>
public sealed record BrokenLineFit
{
    /// <summary>Which bent line.</summary>
    public required BrokenLineShape Shape { get; init; }

    /// <summary>Where it bends, in the unit of x; with standard error and limits where it was searched for and lies between observations.</summary>
    public required Estimate Knot { get; init; }

    /// <summary>
    /// The knots that the data do not contradict: those whose residual sum of squares is below RSS(1 + q_F/df). Holds where the standard error of the knot
    /// fails, and may be lopsided; null for a knot named in advance, or without residual degrees of freedom.
    /// </summary>
    public required Interval? KnotProfile { get; init; }

    /// <summary>Height at x = 0 of the part before the knot.</summary>
    public required Estimate Intercept { get; init; }

    /// <summary>Slope before the knot; 0 by construction for a plateau.</summary>
    public required Estimate SlopeBefore { get; init; }

    /// <summary>Slope after the knot.</summary>
    public required Estimate SlopeAfter { get; init; }

    /// <summary>Slope after minus slope before.</summary>
    public required Estimate SlopeChange { get; init; }

    /// <summary>Residual sum of squares.</summary>
    public required double ResidualSumOfSquares { get; init; }

    /// <summary>Residual standard deviation, in the unit of the response; null without residual degrees of freedom.</summary>
    public required double? ResidualStandardDeviation { get; init; }

    /// <summary>Observations less parameters, a searched knot counted.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>How many observations.</summary>
    public required int Observations { get; init; }

    /// <summary>Parameters of the line with its residual variance, a searched knot counted.</summary>
    public required int Parameters { get; init; }

    /// <summary>Normal log-likelihood; null for a perfect fit.</summary>
    public double? LogLikelihood => InformationCriteria.LogLikelihood(Observations, ResidualSumOfSquares);

    /// <summary>What a reader has to know.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Knot and slopes.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Shape} at {Knot}: slope {SlopeBefore} before, {SlopeAfter} after");
}
