namespace SquadAnalytics.Statistics;

/// <summary>y = a + b x by least squares about the means, for the many small fits inside a search; <see cref="LeastSquares"/> tells more.</summary>
/// <remarks>b = Σ (x - x̄)(y - ȳ) / Σ (x - x̄)²: the QR factorisation of two columns, written out. Where x does not vary b is 0.</remarks>
internal readonly record struct StraightLine(double Intercept, double Slope, double ResidualSumOfSquares, double SquaresOfX, int Points)
{
    /// <summary>Standard error of the slope, √(RSS / (n - 2) / Σ (x - x̄)²); for three points or more at different x.</summary>
    public double SlopeError => Math.Sqrt(ResidualSumOfSquares / (Points - 2) / SquaresOfX);

    /// <summary>Fits a line to two or more points.</summary>
    public static StraightLine Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double meanX = CompensatedSum.Of(x) / x.Length, meanY = CompensatedSum.Of(y) / y.Length;
        double squares = 0, products = 0;
        for (var i = 0; i < x.Length; i++)
        {
            squares += (x[i] - meanX) * (x[i] - meanX);
            products += (x[i] - meanX) * (y[i] - meanY);
        }

        var slope = squares > 0 ? products / squares : 0;
        var rest = 0.0;
        for (var i = 0; i < x.Length; i++)
        {
            var residual = y[i] - meanY - slope * (x[i] - meanX);
            rest += residual * residual;
        }

        return new StraightLine(meanY - slope * meanX, slope, rest, squares, x.Length);
    }
}
