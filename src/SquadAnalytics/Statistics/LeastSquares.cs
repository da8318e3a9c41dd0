using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>Ordinary least squares by Householder QR, refined against residuals in doubled precision; never by normal equations.</summary>
/// <remarks>
/// y = X b + e in the unit of y, X the design's columns, b the coefficients that make Σ e² smallest. Assumes independent errors of equal variance σ². Columns that earlier ones explain are set aside and named in the result.
/// Iterative refinement: Björck (1996), Numerical methods for least squares problems (from memory).
/// </remarks>
public static class LeastSquares
{
    private const int Refinements = 3;

    /// <summary>Fits a response to a design.</summary>
    /// <param name="response">The response, one number for each row of the design.</param>
    /// <param name="design">The explanatory columns.</param>
    /// <param name="options">Settings; the defaults serve.</param>
    /// <returns>The fit, or <see cref="Refusal.TooFewObservations"/> where no residual degree of freedom is left.</returns>
    /// <exception cref="ArgumentException">The lengths differ, the design has no column, or a number is not finite.</exception>
    public static Answer<LinearFit> Fit(IReadOnlyList<double> response, RegressionDesign design, LeastSquaresOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        var y = Numbers.Of(response);
        if (y.Length != design.Observations)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"response must have the design's {design.Observations} rows, but has {y.Length}."), nameof(response));
        var columns = design.Columns();
        if (columns.Length == 0) throw new ArgumentException("The design must have at least one column.", nameof(design));
        var factorization = new QrFactorization(columns, y.Length, (options ?? new LeastSquaresOptions()).RankTolerance);
        if (y.Length <= factorization.Rank)
            return new NotEstimable("the least-squares fit", Refusal.TooFewObservations, factorization.Rank + 1, y.Length, "observations");
        var coefficients = Solve(factorization, columns, y);
        return new LinearFit(design, y, factorization, coefficients, Residuals(factorization, columns, coefficients, y));
    }

    /// <summary>Fits a straight line y = a + b x; its columns are called <c>intercept</c> and <c>slope</c>.</summary>
    /// <returns>The fit, or <see cref="Refusal.TooFewObservations"/> below three points.</returns>
    /// <exception cref="ArgumentException">The lengths differ, or a number is not finite.</exception>
    public static Answer<LinearFit> FitLine(IReadOnlyList<double> x, IReadOnlyList<double> y) =>
        Fit(y, RegressionDesign.WithIntercept(Numbers.Of(x).Length).Add("slope", x));

    // Björck's refinement corrects coefficients and residuals together, so that large residuals do not limit the coefficients either.
    private static double[] Solve(QrFactorization factorization, double[][] columns, double[] y)
    {
        var rank = factorization.Rank;
        var coefficients = factorization.SolveUpper(factorization.Rotate(y));
        var residuals = Residuals(factorization, columns, coefficients, y);
        for (var round = 0; round < Refinements; round++)
        {
            var left = Residuals(factorization, columns, coefficients, y);
            for (var i = 0; i < left.Length; i++) left[i] -= residuals[i];
            var slant = new double[rank];
            for (var j = 0; j < rank; j++) slant[j] = -CompensatedSum.OfProducts(columns[factorization.Order[j]], residuals);
            var inside = factorization.SolveTransposed(slant);
            var rotated = factorization.Rotate(left);
            var correction = factorization.SolveUpper([.. inside.Select((value, j) => rotated[j] - value)]);
            inside.CopyTo(rotated, 0);
            var shift = factorization.Unrotate(rotated);
            for (var i = 0; i < residuals.Length; i++) residuals[i] += shift[i];
            var moved = false;
            for (var j = 0; j < rank; j++) moved |= coefficients[j] != (coefficients[j] += correction[j]);
            if (!moved) break;
        }

        return coefficients;
    }

    private static double[] Residuals(QrFactorization factorization, double[][] columns, double[] coefficients, double[] y)
    {
        var residuals = new double[y.Length];
        for (var i = 0; i < y.Length; i++)
        {
            var rest = new CompensatedSum();
            rest.Add(y[i]);
            for (var j = 0; j < coefficients.Length; j++) rest.AddProduct(-coefficients[j], columns[factorization.Order[j]][i]);
            residuals[i] = rest.Value;
        }

        return residuals;
    }
}
