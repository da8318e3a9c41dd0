namespace SquadAnalytics.Statistics;

/// <summary>Two-way analysis of variance without interaction, for complete and incomplete tables: rows (athletes) and columns (tests).</summary>
/// <remarks>
/// y = μ + row + column + e by least squares; with absences the columns are adjusted for the rows. Assumes that the error is the same for
/// every row and column. The residual standard deviation is the typical error of a set of repeated tests.
/// </remarks>
public sealed record TwoWayAnova
{
    private TwoWayAnova(LinearFit fit, int rows, int columns)
    {
        Rows = fit.Anova[0];
        Columns = fit.Anova[1];
        Residual = fit.Anova[2];
        RowCount = rows;
        ColumnCount = columns;
        Observations = fit.Observations;
        IsComplete = fit.Observations == rows * columns;
        ResidualStandardDeviation = fit.ResidualStandardDeviation;
        Residuals = fit.Residuals;
    }

    /// <summary>The line of the rows, entered first.</summary>
    public AnovaRow Rows { get; }

    /// <summary>The line of the columns, adjusted for the rows.</summary>
    public AnovaRow Columns { get; }

    /// <summary>The residual line.</summary>
    public AnovaRow Residual { get; }

    /// <summary>How many rows there are.</summary>
    public int RowCount { get; }

    /// <summary>How many columns there are.</summary>
    public int ColumnCount { get; }

    /// <summary>How many cells are filled.</summary>
    public int Observations { get; }

    /// <summary>Whether every row has every column exactly once.</summary>
    public bool IsComplete { get; }

    /// <summary>Residual standard deviation √MSE.</summary>
    public double ResidualStandardDeviation { get; }

    /// <summary>Residuals, in the order of the observations.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>Residual degrees of freedom: observations minus the rank of the design.</summary>
    public int DegreesOfFreedom => Residual.DegreesOfFreedom;

    /// <summary>Analyses observations by row and column.</summary>
    /// <remarks>Source: Fisher (1925), Statistical methods for research workers (from memory).</remarks>
    /// <param name="values">The observations.</param>
    /// <param name="rows">The row (athlete) of each.</param>
    /// <param name="columns">The column (test) of each.</param>
    /// <returns>The analysis, or <see cref="Refusal.TooFewObservations"/> with one row, one column or no residual degree of freedom, or <see cref="Refusal.TooManyObservations"/> above 301 rows and columns together.</returns>
    /// <exception cref="ArgumentException">The lengths differ, a cell is filled twice, or a number is not finite.</exception>
    public static Answer<TwoWayAnova> Fit(IReadOnlyList<double> values, IReadOnlyList<string> rows, IReadOnlyList<string> columns)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(columns);
        var y = Numbers.Of(values);
        var rowCount = rows.Distinct(StringComparer.Ordinal).Count();
        var columnCount = columns.Distinct(StringComparer.Ordinal).Count();
        if (rowCount < 2) return new NotEstimable("the two-way analysis of variance", Refusal.TooFewObservations, 2, rowCount, "rows");
        if (columnCount < 2) return new NotEstimable("the two-way analysis of variance", Refusal.TooFewObservations, 2, columnCount, "columns");
        if (rowCount + columnCount - 1 > RegressionDesign.MostColumns)
            return NotEstimable.TooMany("the two-way analysis of variance", RegressionDesign.MostColumns + 1, rowCount + columnCount, "rows and columns together");
        var design = RegressionDesign.WithIntercept(y.Length).AddFactor("rows", rows).AddFactor("columns", columns);
        if (rows.Zip(columns).Distinct().Count() < y.Length)
            throw new ArgumentException("Every pair of row and column may occur only once.", nameof(columns));
        var centre = Descriptive.MeanOf(y);
        return LeastSquares.Fit([.. y.Select(value => value - centre)], design).Select(fit => new TwoWayAnova(fit, rowCount, columnCount));
    }

    /// <summary>The three lines of the table.</summary>
    public override string ToString() => $"{Rows}; {Columns}; {Residual}";
}
