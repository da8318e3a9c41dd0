using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>A least-squares fit: coefficients with standard errors, residual scatter, what the terms explain.</summary>
/// <remarks>Everything is in the response's unit (coefficients: per unit of their column). Intervals use t with the residual degrees of freedom. Assumes independent normal errors of equal variance. Source: textbook.</remarks>
public sealed partial record LinearFit
{
    private readonly double[] _y;
    private readonly double[] _residuals;
    private readonly double[] _solution;
    private readonly QrFactorization _factorization;
    private readonly RegressionDesign _design;

    // What not every caller asks for is worked out when it is asked for: a squad table fits one line per session.
    internal LinearFit(RegressionDesign design, double[] y, QrFactorization factorization, double[] solution, double[] residuals)
    {
        (_design, _y, _factorization, _solution, _residuals) = (design, (double[])y.Clone(), factorization, solution, residuals);
        Rank = factorization.Rank;
        Observations = y.Length;
        DegreesOfFreedom = y.Length - Rank;
        ResidualSumOfSquares = CompensatedSum.OfProducts(residuals, residuals);
        ResidualStandardDeviation = Math.Sqrt(ResidualSumOfSquares / DegreesOfFreedom);
    }

    /// <summary>How many observations were fitted.</summary>
    public int Observations { get; }

    /// <summary>How many independent columns the design has.</summary>
    public int Rank { get; }

    /// <summary>Residual degrees of freedom: observations minus rank.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>The independent columns by name.</summary>
    public IReadOnlyList<string> ColumnNames => field ??= [.. _factorization.Order.Take(Rank).Order().Select(column => _design.ColumnNames[column])];

    /// <summary>Columns that earlier ones explain and that have no coefficient of their own; empty in an ordinary fit.</summary>
    public IReadOnlyList<string> AliasedColumns => field ??= [.. _factorization.Order.Skip(Rank).Order().Select(column => _design.ColumnNames[column])];

    /// <summary>The coefficients, in the order of <see cref="ColumnNames"/>.</summary>
    public IReadOnlyList<TEstimate> Coefficients => field ??= Estimated();

    /// <summary>Fitted values.</summary>
    public IReadOnlyList<double> Fitted => field ??= [.. _y.Select((value, i) => value - _residuals[i])];

    /// <summary>Residuals, response minus fitted value.</summary>
    public IReadOnlyList<double> Residuals => _residuals;

    /// <summary>Residual sum of squares.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>Residual standard deviation √(RSS / df).</summary>
    public double ResidualStandardDeviation { get; }

    /// <summary>Share of the sum of squares (about the mean, if there is an intercept) that the fit explains, or null where there is nothing to explain.</summary>
    public double? RSquared
    {
        get
        {
            var total = ResidualSumOfSquares + Anova.SkipLast(1).Sum(row => row.SumOfSquares);
            return total > 0 ? 1 - ResidualSumOfSquares / total : null;
        }
    }

    /// <summary>1 - (1 - R²)(n - intercept)/df, or null where R² is.</summary>
    public double? AdjustedRSquared => 1 - (1 - RSquared) * (Observations - InterceptCount) / DegreesOfFreedom;

    /// <summary>Analysis of variance, each term after those before it; the last line is the residuals. The intercept has no line.</summary>
    public IReadOnlyList<AnovaRow> Anova => field ??= SequentialAnova();

    /// <summary>Variances and covariances of the coefficients under equal error variances.</summary>
    public CoefficientCovariance Covariance => field ??= CovarianceFrom("equal variances", [.. Enumerable.Range(0, Rank).Select(j => UnitVector(j, ResidualStandardDeviation))]);

    /// <summary>The test of all terms together against the mean (or against 0 without intercept).</summary>
    public AnovaRow Overall
    {
        get
        {
            var terms = Anova.SkipLast(1).ToArray();
            return AnovaRow.Tested("regression", terms.Sum(row => row.DegreesOfFreedom), terms.Sum(row => row.SumOfSquares), ResidualSumOfSquares / DegreesOfFreedom, DegreesOfFreedom);
        }
    }

    /// <summary>Log-likelihood of normal errors at their maximum, -n/2 (ln(2π RSS/n) + 1), or null where the residuals are all 0.</summary>
    public double? LogLikelihood => ResidualSumOfSquares > 0 ? -Observations / 2.0 * (Math.Log(Math.Tau * ResidualSumOfSquares / Observations) + 1) : null;

    /// <summary>Akaike's criterion 2 p - 2 ln L, where p counts σ too.</summary>
    public double? Aic => 2.0 * (Rank + 1) - 2 * LogLikelihood;

    /// <summary>The Bayesian (Schwarz) criterion p ln n - 2 ln L, where p counts σ too.</summary>
    public double? Bic => Math.Log(Observations) * (Rank + 1) - 2 * LogLikelihood;

    /// <summary>The coefficient of a column.</summary>
    /// <exception cref="ArgumentException">There is no such column, or it is aliased.</exception>
    public TEstimate Coefficient(string name) =>
        Coefficients.FirstOrDefault(coefficient => coefficient.Name == name) ?? throw new ArgumentException($"The fit has no coefficient called {name}.", nameof(name));

    /// <summary>Coefficients, residual standard deviation and degrees of freedom.</summary>
    public override string ToString() => string.Join("; ", Coefficients)
        + string.Create(CultureInfo.InvariantCulture, $"; residual SD {ResidualStandardDeviation:G5}, df {DegreesOfFreedom}");

    private int InterceptCount => _design.HasIntercept ? 1 : 0;

    // Position in factored order of each independent column, by its original order.
    private int[] Places() => [.. Enumerable.Range(0, Rank).OrderBy(position => _factorization.Order[position])];

    private TEstimate[] Estimated()
    {
        var (places, errors) = (Places(), Covariance.StandardErrors);
        return [.. ColumnNames.Select((name, i) => new TEstimate(name, _solution[places[i]], errors[i], DegreesOfFreedom))];
    }

    private double[] UnitVector(int index, double length)
    {
        var vector = new double[Rank];
        vector[index] = length;
        return vector;
    }

    private AnovaRow[] SequentialAnova()
    {
        var rows = new List<AnovaRow>();
        var effects = Array.ConvertAll(ThinQ, direction => CompensatedSum.OfProducts(direction, _y));
        var column = 0;
        foreach (var term in _design.Terms)
        {
            var (first, behind) = (column, column + term.Columns.Length);
            column = behind;
            if (term.Name == RegressionDesign.Intercept) continue;
            var places = Enumerable.Range(0, Rank).Where(position => _factorization.Order[position] >= first && _factorization.Order[position] < behind).ToArray();
            rows.Add(AnovaRow.Tested(term.Name, places.Length, places.Sum(position => effects[position] * effects[position]), ResidualSumOfSquares / DegreesOfFreedom, DegreesOfFreedom));
        }

        return [.. rows, AnovaRow.Residual(ResidualSumOfSquares, DegreesOfFreedom)];
    }
}
