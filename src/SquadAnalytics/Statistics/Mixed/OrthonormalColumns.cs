namespace SquadAnalytics.Statistics;

/// <summary>The columns of the fixed effects made orthonormal: X = Q R, and the response freed of them.</summary>
/// <remarks>
/// Modified Gram-Schmidt, each column orthogonalised twice, which keeps Q orthogonal to rounding error even for badly scaled columns.
/// Source: Giraud, Langou and Rozloznik (2005), Computers and Mathematics with Applications 50:1069-1075 (from memory).
/// </remarks>
internal sealed class OrthonormalColumns
{
    private const double DependenceTolerance = 1e-10;

    private OrthonormalColumns(double[][] columns, double[] triangle, double[] coefficients, double[] residuals, int rank)
    {
        Columns = columns;
        Triangle = triangle;
        Coefficients = coefficients;
        Residuals = residuals;
        Rank = rank;
    }

    /// <summary>Q, one array per column.</summary>
    public double[][] Columns { get; }

    /// <summary>R, p × p, column by column.</summary>
    public double[] Triangle { get; }

    /// <summary>Q'y.</summary>
    public double[] Coefficients { get; }

    /// <summary>y - QQ'y.</summary>
    public double[] Residuals { get; }

    /// <summary>How many of the columns are linearly independent.</summary>
    public int Rank { get; }

    public static OrthonormalColumns Of(IReadOnlyList<double[]> columns, double[] response)
    {
        var p = columns.Count;
        var q = new double[p][];
        var triangle = new double[p * p];
        var rank = 0;
        for (var j = 0; j < p; j++)
        {
            var column = (double[])columns[j].Clone();
            var before = Norm(column);
            for (var pass = 0; pass < 2; pass++)
            {
                for (var k = 0; k < j; k++) triangle[j * p + k] += Remove(column, q[k]);
            }

            var norm = Norm(column);
            if (norm > DependenceTolerance * before)
            {
                rank++;
                triangle[j * p + j] = norm;
                for (var i = 0; i < column.Length; i++) column[i] /= norm;
            }

            q[j] = column;
        }

        var residuals = (double[])response.Clone();
        var coefficients = new double[p];
        for (var pass = 0; pass < 2; pass++)
        {
            for (var k = 0; k < p; k++) coefficients[k] += Remove(residuals, q[k]);
        }

        return new OrthonormalColumns(q, triangle, coefficients, residuals, rank);
    }

    private static double Norm(double[] column)
    {
        var largest = 0.0;
        foreach (var entry in column) largest = Math.Max(largest, Math.Abs(entry));
        if (largest == 0) return 0;
        var sum = 0.0;
        foreach (var entry in column) sum += entry / largest * (entry / largest);
        return largest * Math.Sqrt(sum);
    }

    private static double Remove(double[] column, double[] direction)
    {
        var product = 0.0;
        for (var i = 0; i < column.Length; i++) product += column[i] * direction[i];
        for (var i = 0; i < column.Length; i++) column[i] -= product * direction[i];
        return product;
    }
}
