namespace SquadAnalytics.Statistics;

/// <summary>Products and inverses of the small matrices of variance parameters and fixed effects.</summary>
internal static class SmallMatrix
{
    public static double[,] Multiply(double[,] a, double[,] b)
    {
        int rows = a.GetLength(0), inner = a.GetLength(1), columns = b.GetLength(1);
        var result = new double[rows, columns];
        for (var i = 0; i < rows; i++)
        {
            for (var k = 0; k < inner; k++)
            {
                var weight = a[i, k];
                if (weight == 0) continue;
                for (var j = 0; j < columns; j++) result[i, j] += weight * b[k, j];
            }
        }

        return result;
    }

    public static double[,] Transpose(double[,] a)
    {
        var result = new double[a.GetLength(1), a.GetLength(0)];
        for (var i = 0; i < a.GetLength(0); i++)
        {
            for (var j = 0; j < a.GetLength(1); j++) result[j, i] = a[i, j];
        }

        return result;
    }

    /// <summary>Trace of a product of two matrices.</summary>
    public static double TraceOfProduct(double[,] a, double[,] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.GetLength(0); i++)
        {
            for (var j = 0; j < a.GetLength(1); j++) sum += a[i, j] * b[j, i];
        }

        return sum;
    }

    public static void Add(double[,] target, double[,] matrix, double factor = 1)
    {
        for (var i = 0; i < target.GetLength(0); i++)
        {
            for (var j = 0; j < target.GetLength(1); j++) target[i, j] += factor * matrix[i, j];
        }
    }

    /// <summary>Inverse of a symmetric positive definite matrix by its Cholesky factor.</summary>
    public static double[,] InverseOfPositive(double[,] matrix)
    {
        var n = matrix.GetLength(0);
        var lower = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            for (var i = j; i < n; i++)
            {
                var sum = matrix[i, j];
                for (var k = 0; k < j; k++) sum -= lower[i, k] * lower[j, k];
                lower[i, j] = i == j ? Math.Sqrt(sum) : sum / lower[j, j];
            }
        }

        var inverse = new double[n, n];
        for (var c = 0; c < n; c++)
        {
            for (var i = c; i < n; i++)
            {
                var sum = i == c ? 1.0 : 0.0;
                for (var k = c; k < i; k++) sum -= lower[i, k] * inverse[k, c];
                inverse[i, c] = sum / lower[i, i];
            }
        }

        return Multiply(Transpose(inverse), inverse);
    }
}
