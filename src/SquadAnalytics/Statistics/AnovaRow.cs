namespace SquadAnalytics.Statistics;

/// <summary>One line of an analysis of variance.</summary>
/// <param name="Term">The term, or <c>residuals</c>.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom.</param>
/// <param name="SumOfSquares">Sum of squares, in the response's unit squared.</param>
/// <param name="MeanSquare">Sum of squares over degrees of freedom, or null without degrees of freedom.</param>
/// <param name="F">Mean square over the residual mean square, or null for the residual line and where that is 0.</param>
/// <param name="PValue">P(F or more), or null where F is.</param>
public sealed record AnovaRow(string Term, int DegreesOfFreedom, double SumOfSquares, double? MeanSquare, double? F, double? PValue)
{
    internal static AnovaRow Tested(string term, int degreesOfFreedom, double sumOfSquares, double residualMeanSquare, int residualDf)
    {
        double? meanSquare = degreesOfFreedom > 0 ? sumOfSquares / degreesOfFreedom : null;
        var f = residualMeanSquare > 0 ? meanSquare / residualMeanSquare : null;
        return new AnovaRow(term, degreesOfFreedom, sumOfSquares, meanSquare, f, f is { } ratio ? FDistribution.UpperTail(ratio, degreesOfFreedom, residualDf) : null);
    }

    internal static AnovaRow Residual(double sumOfSquares, int degreesOfFreedom) =>
        new("residuals", degreesOfFreedom, sumOfSquares, sumOfSquares / degreesOfFreedom, null, null);

    /// <summary>Term, degrees of freedom, sum of squares, F and p.</summary>
    public override string ToString() => F is null
        ? FormattableString.Invariant($"{Term}: df {DegreesOfFreedom}, SS {SumOfSquares:G6}")
        : FormattableString.Invariant($"{Term}: df {DegreesOfFreedom}, SS {SumOfSquares:G6}, F {F:G5}, p {PValue:G3}");
}
