using System.Globalization;

namespace SquadAnalytics.Statistics;

public sealed partial record LinearFit
{
    private const double EstimableTolerance = 1e-8;

    // A leverage this close to 1 is 1: the observation decides its own fitted value and its residual is rounding noise.
    private const double FullLeverage = 1 - 1e-10;

    /// <summary>A weighted sum of coefficients with its standard error.</summary>
    /// <remarks>w'b, SE s √(w'(X'X)⁻¹w), with w the weights, b the coefficients, X the design and s the residual standard deviation.</remarks>
    /// <param name="name">What the sum is called in the result.</param>
    /// <param name="weights">One weight for each column of the design, in its order (aliased ones included).</param>
    /// <returns>The contrast, or <see cref="Refusal.WeaklyIdentified"/> where the design cannot tell it from others.</returns>
    /// <exception cref="ArgumentException">The number of weights differs from the design's columns, or one is not finite.</exception>
    public Answer<TEstimate> Contrast(string name, IReadOnlyList<double> weights)
    {
        var ordered = InFactoredOrder(weights);
        if (!IsEstimable(ordered))
            return new NotEstimable(name, Refusal.WeaklyIdentified, "observations that set it apart from the other columns", "only observations in which they move together");
        var rotated = _factorization.SolveTransposed(ordered.AsSpan(0, Rank));
        var error = ResidualStandardDeviation * Math.Sqrt(CompensatedSum.OfProducts(rotated, rotated));
        return new TEstimate(name, ValueOf(ordered), error, DegreesOfFreedom);
    }

    /// <summary>The expected response at one row of explanatory values, with its interval and that of a new observation.</summary>
    /// <remarks>Expected response ± q_t SE as for <see cref="Contrast"/>; a new observation ± q_t √(SE² + s²), s the residual standard deviation, q_t the t quantile.</remarks>
    /// <param name="row">One number for each column of the design, in its order; 1 for the intercept.</param>
    /// <param name="level">Confidence level.</param>
    /// <returns>The prediction, or <see cref="Refusal.WeaklyIdentified"/> where the design cannot tell it from others.</returns>
    /// <exception cref="ArgumentException">The number of values differs from the design's columns, or one is not finite.</exception>
    public Answer<Prediction> Predict(IReadOnlyList<double> row, ConfidenceLevel level) => Contrast("prediction", row).Select(mean =>
    {
        var factor = StudentTDistribution.TwoSidedFactor(level, DegreesOfFreedom);
        var scatter = Math.Sqrt(mean.StandardError * mean.StandardError + ResidualStandardDeviation * ResidualStandardDeviation);
        return new Prediction(
            mean.Value,
            mean.StandardError,
            mean.Interval(level),
            new Interval(mean.Value - factor * scatter, mean.Value + factor * scatter, level));
    });

    /// <summary>Fitted value, residual, leverage, studentised residuals and Cook's distance of every observation.</summary>
    /// <remarks>Belsley, Kuh &amp; Welsch (1980), Regression diagnostics (from memory; checked against R 4.2.2).</remarks>
    public IReadOnlyList<ObservationDiagnostics> Diagnostics() => [.. Enumerable.Range(0, Observations).Select(Diagnose)];

    /// <summary>Leverages, the diagonal of the hat matrix.</summary>
    internal double[] Leverages() => [.. Enumerable.Range(0, Observations).Select(Leverage)];

    /// <summary>The columns of Q, whose span is the design's.</summary>
    internal double[][] ThinQ => field ??= _factorization.ThinQ();

    /// <summary>The weights by which a coefficient is made of the responses: its row of (X'X)⁻¹X'.</summary>
    internal double[] InverseRow(string coefficient)
    {
        var place = Places()[ColumnNames.ToList().IndexOf(coefficient)];
        var solved = _factorization.SolveTransposed(UnitVector(place, 1));
        return [.. Enumerable.Range(0, Observations).Select(i => Enumerable.Range(0, Rank).Sum(k => solved[k] * ThinQ[k][i]))];
    }

    /// <summary>Covariance R⁻¹ S R⁻ᵀ from a matrix S = L Lᵀ in rotated coordinates, given by the columns of L.</summary>
    internal CoefficientCovariance CovarianceFrom(string method, double[][] roots)
    {
        var places = Places();
        var solved = Array.ConvertAll(roots, root => _factorization.SolveUpper(root));
        double Element(int i, int j)
        {
            var sum = new CompensatedSum();
            foreach (var column in solved) sum.AddProduct(column[places[i]], column[places[j]]);
            return sum.Value;
        }

        return new CoefficientCovariance(method, ColumnNames, [.. Enumerable.Range(0, Rank).Select(i => Enumerable.Range(0, Rank).Select(j => Element(i, j)).ToArray())]);
    }

    private ObservationDiagnostics Diagnose(int index)
    {
        var (leverage, residual) = (Leverage(index), _residuals[index]);
        var s = ResidualStandardDeviation;
        if (leverage >= FullLeverage || s == 0) return new ObservationDiagnostics(Fitted[index], residual, leverage, null, null, null);
        var standardized = residual / (s * Math.Sqrt(1 - leverage));
        var leftOver = (ResidualSumOfSquares - residual * residual / (1 - leverage)) / (DegreesOfFreedom - 1);
        double? studentized = DegreesOfFreedom > 1 && leftOver > 0 ? residual / Math.Sqrt(leftOver * (1 - leverage)) : null;
        return new ObservationDiagnostics(Fitted[index], residual, leverage, standardized, studentized, standardized * standardized * leverage / ((1 - leverage) * Rank));
    }

    private double Leverage(int index) => ThinQ.Sum(column => column[index] * column[index]);

    private double ValueOf(double[] ordered)
    {
        var places = Places();
        var sum = new CompensatedSum();
        for (var i = 0; i < Rank; i++) sum.AddProduct(ordered[places[i]], Coefficients[i].Value);
        return sum.Value;
    }

    private double[] InFactoredOrder(IReadOnlyList<double> weights)
    {
        var given = Numbers.Of(weights);
        if (given.Length != _design.ColumnNames.Count)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"weights must have one number for each of the {_design.ColumnNames.Count} columns, but has {given.Length}."), nameof(weights));
        return Array.ConvertAll(_factorization.Order, column => given[column]);
    }

    // An aliased column is a sum of independent ones; a contrast is estimable where its weights are the same sum.
    private bool IsEstimable(double[] ordered)
    {
        for (var aliased = Rank; aliased < ordered.Length; aliased++)
        {
            var composed = CompensatedSum.OfProducts(_factorization.Composition(aliased), ordered.AsSpan(0, Rank));
            if (Math.Abs(composed - ordered[aliased]) > EstimableTolerance * (1 + Math.Abs(ordered[aliased]))) return false;
        }

        return true;
    }
}
