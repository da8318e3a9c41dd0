namespace SquadAnalytics.Statistics;

internal sealed partial class MixedKernel
{
    private readonly double[] _solution;
    private readonly double[] _residual;
    private readonly double[] _spread;
    private readonly double[] _spreadResidual;
    private readonly double[] _inverse;
    private readonly double[] _inverseResidual;

    /// <summary>Gradients of the three parts with respect to θ at the point last evaluated.</summary>
    public void EvaluateGradient()
    {
        Array.Clear(LogDetZGradient);
        Array.Clear(LogDetXGradient);
        Array.Clear(RssGradient);
        var p = _data.FixedCount;
        unchecked
        {
            for (var b = 0; b < _data.Blocks.Length; b++)
            {
                var block = _data.Blocks[b];
                int q = block.Effects, k = block.Rows;
                var relative = _relative.AsSpan(_relativeStart[b], k * q);
                SolveBlock(b);
                SpreadOverFixed(q, k);
                if (block.LogDetWeight > 0) InvertBlock(b);
                foreach (var slot in block.Slots)
                {
                    var term = _data.Terms[slot.Term];
                    for (var c = 0; c < term.Width; c++)
                    {
                        for (var r = c; r < term.Width; r++)
                        {
                            var index = term.ThetaIndex(r, c);
                            if (index < 0) continue;
                            var z = block.Data.AsSpan((slot.Offset + r) * k, k);
                            var column = slot.Offset + c;
                            if (block.LogDetWeight > 0) LogDetZGradient[index] += 2 * block.LogDetWeight * Weighted(z, _inverseResidual, _inverse, k, q, q, column);
                            LogDetXGradient[index] -= 2 * Weighted(z, _spreadResidual, _spread, k, q, p, column);
                            RssGradient[index] -= 2 * Weighted(z, _spreadResidual.AsSpan(p * k), _spread.AsSpan(p * q), k, q, 1, column);
                        }
                    }
                }
            }
        }
    }

    /// <summary>Σ over right-hand sides of (z'e)(u at one random effect).</summary>
    private static double Weighted(ReadOnlySpan<double> z, ReadOnlySpan<double> residuals, ReadOnlySpan<double> solutions, int k, int q, int count, int effect)
    {
        unchecked
        {
            var total = 0.0;
            for (var s = 0; s < count; s++)
            {
                var u = solutions[s * q + effect];
                if (u == 0) continue;
                var product = 0.0;
                var e = residuals.Slice(s * k, k);
                for (var i = 0; i < z.Length; i++) product += z[i] * e[i];
                total += product * u;
            }

            return total;
        }
    }

    /// <summary>U = R⁻¹R_12 for the columns [X y], and their residuals [X y] - ZΛU.</summary>
    private void SolveBlock(int b)
    {
        unchecked
        {
            var block = _data.Blocks[b];
            int q = block.Effects, k = block.Rows, p = _data.FixedCount;
            var factor = _factors.AsSpan(_factorStart[b], q * (q + p + 1));
            var relative = _relative.AsSpan(_relativeStart[b], k * q);
            for (var s = 0; s <= p; s++)
            {
                var u = _solution.AsSpan(s * q, q);
                var right = factor.Slice((q + s) * q, q);
                for (var j = q - 1; j >= 0; j--)
                {
                    var sum = right[j];
                    for (var c = j + 1; c < q; c++) sum -= factor[c * q + j] * u[c];
                    u[j] = sum / factor[j * q + j];
                }

                var e = _residual.AsSpan(s * k, k);
                block.Data.AsSpan((q + s) * k, k).CopyTo(e);
                SubtractProduct(e, relative, u, k, q);
            }
        }
    }

    /// <summary>The same for the columns X R_X⁻¹ and for y - Xβ.</summary>
    private void SpreadOverFixed(int q, int k)
    {
        unchecked
        {
            var p = _data.FixedCount;
            for (var s = 0; s < p; s++)
            {
                Combine(_solution, InverseTriangle.AsSpan(s * p, s + 1), _spread.AsSpan(s * q, q), q);
                Combine(_residual, InverseTriangle.AsSpan(s * p, s + 1), _spreadResidual.AsSpan(s * k, k), k);
            }

            var u = _spread.AsSpan(p * q, q);
            var e = _spreadResidual.AsSpan(p * k, k);
            Combine(_solution, Beta, u, q);
            Combine(_residual, Beta, e, k);
            for (var j = 0; j < q; j++) u[j] = _solution[p * q + j] - u[j];
            for (var i = 0; i < k; i++) e[i] = _residual[p * k + i] - e[i];
        }
    }

    private static void Combine(ReadOnlySpan<double> columns, ReadOnlySpan<double> weights, Span<double> target, int length)
    {
        unchecked
        {
            target.Clear();
            for (var c = 0; c < weights.Length; c++)
            {
                var weight = weights[c];
                var column = columns.Slice(c * length, length);
                for (var i = 0; i < target.Length; i++) target[i] += weight * column[i];
            }
        }
    }

    /// <summary>R⁻¹ and ZΛR⁻¹: the right-hand sides of the log determinant.</summary>
    private void InvertBlock(int b)
    {
        unchecked
        {
            var block = _data.Blocks[b];
            int q = block.Effects, k = block.Rows;
            var factor = _factors.AsSpan(_factorStart[b], q * (q + _data.FixedCount + 1));
            var relative = _relative.AsSpan(_relativeStart[b], k * q);
            for (var s = 0; s < q; s++)
            {
                var column = _inverse.AsSpan(s * q, q);
                column[(s + 1)..].Clear();
                for (var j = s; j >= 0; j--)
                {
                    var sum = j == s ? 1.0 : 0.0;
                    for (var c = j + 1; c <= s; c++) sum -= factor[c * q + j] * column[c];
                    column[j] = sum / factor[j * q + j];
                }

                var e = _inverseResidual.AsSpan(s * k, k);
                e.Clear();
                SubtractProduct(e, relative, column, k, q);
                for (var i = 0; i < k; i++) e[i] = -e[i];
            }
        }
    }

    private static void SubtractProduct(Span<double> target, ReadOnlySpan<double> matrix, ReadOnlySpan<double> vector, int k, int q)
    {
        unchecked
        {
            for (var c = 0; c < q; c++)
            {
                var weight = vector[c];
                if (weight == 0) continue;
                var column = matrix.Slice(c * k, k);
                for (var i = 0; i < target.Length; i++) target[i] -= weight * column[i];
            }
        }
    }
}
