using System.Numerics;

namespace SquadAnalytics.Statistics;

/// <summary>Adds rows to a triangular factor by Householder reflections: the step that every least-squares problem of this engine is made of.</summary>
/// <remarks>
/// Orthogonal reduction of [R; rows], one column after another; no cross products are formed. Both matrices are stored column by
/// column. Source: Golub and Van Loan (2013), Matrix Computations, 4th edition, on updating a factorisation (from memory).
/// </remarks>
internal static class TriangularUpdate
{
    // Entries below 1e-145 are what rounding left of columns of length 1; their squares would underflow.
    private const double Negligible = 1e-290;

    /// <summary>
    /// Reflects the rows into the first <paramref name="pivots"/> rows of R. Afterwards the first <paramref name="pivots"/> columns of the
    /// rows are zero by construction (not written), and the other columns hold what R's pivot rows could not absorb.
    /// </summary>
    /// <param name="factor">R, column by column with stride <paramref name="factorStride"/>.</param>
    /// <param name="factorStride">Stride of R's columns.</param>
    /// <param name="rows">The new rows, column by column with stride <paramref name="rowStride"/>.</param>
    /// <param name="rowStride">Stride of the rows' columns.</param>
    /// <param name="rowCount">How many new rows.</param>
    /// <param name="width">How many columns, of both.</param>
    /// <param name="pivots">How many columns to eliminate.</param>
    public static void Append(Span<double> factor, int factorStride, Span<double> rows, int rowStride, int rowCount, int width, int pivots)
    {
        unchecked
        {
            for (var j = 0; j < pivots; j++)
            {
                var vector = rows.Slice(j * rowStride, rowCount);
                var tail = Dot(vector, vector);
                if (tail < Negligible) continue;
                ref var diagonal = ref factor[j * factorStride + j];
                var norm = Math.Sqrt(diagonal * diagonal + tail);
                var head = diagonal >= 0 ? diagonal + norm : diagonal - norm;
                diagonal = diagonal >= 0 ? -norm : norm;
                var scale = 2 / (head * head + tail);
                for (var c = j + 1; c < width; c++)
                {
                    var column = rows.Slice(c * rowStride, rowCount);
                    ref var top = ref factor[c * factorStride + j];
                    var weight = scale * (head * top + Dot(vector, column));
                    top -= weight * head;
                    Subtract(column, weight, vector);
                }
            }
        }
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        unchecked
        {
            var sum = 0.0;
            var i = 0;
            if (a.Length >= 2 * Vector<double>.Count)
            {
                var lanes = Vector<double>.Zero;
                for (; i <= a.Length - Vector<double>.Count; i += Vector<double>.Count) lanes += new Vector<double>(a[i..]) * new Vector<double>(b[i..]);
                sum = Vector.Sum(lanes);
            }

            for (; i < a.Length; i++) sum += a[i] * b[i];
            return sum;
        }
    }

    private static void Subtract(Span<double> target, double weight, ReadOnlySpan<double> source)
    {
        unchecked
        {
            var i = 0;
            if (target.Length >= 2 * Vector<double>.Count)
            {
                var factor = new Vector<double>(weight);
                for (; i <= target.Length - Vector<double>.Count; i += Vector<double>.Count)
                    (new Vector<double>(target[i..]) - factor * new Vector<double>(source[i..])).CopyTo(target[i..]);
            }

            for (; i < target.Length; i++) target[i] -= weight * source[i];
        }
    }
}
