namespace SquadAnalytics.Statistics;

/// <summary>Variances and covariances of the independent coefficients of a linear model, and how they were obtained.</summary>
public sealed record CoefficientCovariance
{
    private readonly double[][] _matrix;

    internal CoefficientCovariance(string method, IReadOnlyList<string> names, double[][] matrix)
    {
        Method = method;
        Names = names;
        _matrix = matrix;
    }

    /// <summary>How the matrix was obtained, for example <c>equal variances</c>.</summary>
    public string Method { get; }

    /// <summary>The coefficients' names, in the order of rows and columns.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>Standard errors, the square roots of the diagonal, in the order of <see cref="Names"/>.</summary>
    public IReadOnlyList<double> StandardErrors => [.. _matrix.Select((row, i) => Math.Sqrt(row[i]))];

    /// <summary>The covariance of two coefficients by position.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A position is outside the matrix.</exception>
    public double this[int row, int column] => _matrix[Position(row)][Position(column)];

    private int Position(int index) => index >= 0 && index < Names.Count
        ? index
        : throw new ArgumentOutOfRangeException(nameof(index), index, FormattableString.Invariant($"Positions run from 0 to {Names.Count - 1}."));
}
