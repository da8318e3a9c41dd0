namespace SquadAnalytics.Statistics;

/// <summary>Eigenvalues and eigenvectors of a small symmetric matrix, by cyclic Jacobi rotations.</summary>
/// <remarks>Source: Golub and Van Loan (2013), Matrix Computations, 4th edition, Jacobi methods (from memory).</remarks>
internal sealed class SymmetricEigen
{
    private const int MaximumSweeps = 60;

    private SymmetricEigen(double[] values, double[,] vectors)
    {
        Values = values;
        Vectors = vectors;
    }

    /// <summary>Eigenvalues, unsorted.</summary>
    public double[] Values { get; }

    /// <summary>Eigenvectors, one per column.</summary>
    public double[,] Vectors { get; }

    public static SymmetricEigen Of(double[,] matrix)
    {
        var n = matrix.GetLength(0);
        var a = (double[,])matrix.Clone();
        var v = new double[n, n];
        for (var i = 0; i < n; i++) v[i, i] = 1;
        for (var sweep = 0; sweep < MaximumSweeps; sweep++)
        {
            double off = 0, on = 0;
            for (var i = 0; i < n; i++)
            {
                on += a[i, i] * a[i, i];
                for (var j = i + 1; j < n; j++) off += a[i, j] * a[i, j];
            }

            if (off <= 1e-32 * on) break;
            for (var i = 0; i < n; i++)
            {
                for (var j = i + 1; j < n; j++) Rotate(a, v, i, j);
            }
        }

        var values = new double[n];
        for (var i = 0; i < n; i++) values[i] = a[i, i];
        return new SymmetricEigen(values, v);
    }

    /// <summary>The matrix with each eigenvalue replaced by what <paramref name="function"/> makes of it.</summary>
    public double[,] Apply(Func<double, double> function)
    {
        var n = Values.Length;
        var result = new double[n, n];
        for (var k = 0; k < n; k++)
        {
            var value = function(Values[k]);
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < n; j++) result[i, j] += value * Vectors[i, k] * Vectors[j, k];
            }
        }

        return result;
    }

    private static void Rotate(double[,] a, double[,] v, int i, int j)
    {
        if (a[i, j] == 0) return;
        var n = a.GetLength(0);
        var tau = (a[j, j] - a[i, i]) / (2 * a[i, j]);
        var t = Math.Abs(tau) > 1e150 ? 0.5 / tau : (tau >= 0 ? 1 : -1) / (Math.Abs(tau) + Math.Sqrt(1 + tau * tau));
        var c = 1 / Math.Sqrt(1 + t * t);
        var s = t * c;
        for (var k = 0; k < n; k++) (a[k, i], a[k, j]) = (c * a[k, i] - s * a[k, j], s * a[k, i] + c * a[k, j]);
        for (var k = 0; k < n; k++) (a[i, k], a[j, k]) = (c * a[i, k] - s * a[j, k], s * a[i, k] + c * a[j, k]);
        for (var k = 0; k < n; k++) (v[k, i], v[k, j]) = (c * v[k, i] - s * v[k, j], s * v[k, i] + c * v[k, j]);
    }
}
