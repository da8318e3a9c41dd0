namespace SquadAnalytics.Statistics;

internal sealed partial class MixedKernel
{
    /// <summary>-d(X'V⁻¹X)/dθ for each θ, p × p, at the point last evaluated.</summary>
    public double[][,] FixedDerivatives()
    {
        var p = _data.FixedCount;
        var result = new double[ThetaCount][,];
        for (var m = 0; m < result.Length; m++) result[m] = new double[p, p];
        for (var b = 0; b < _data.Blocks.Length; b++)
        {
            var block = _data.Blocks[b];
            int q = block.Effects, k = block.Rows;
            SolveBlock(b);
            foreach (var slot in block.Slots)
            {
                var term = _data.Terms[slot.Term];
                for (var c = 0; c < term.Width; c++)
                {
                    for (var r = c; r < term.Width; r++)
                    {
                        if (term.ThetaIndex(r, c) is < 0) continue;
                        var target = result[term.ThetaIndex(r, c)];
                        var z = block.Data.AsSpan((slot.Offset + r) * k, k);
                        for (var i = 0; i < p; i++)
                        {
                            var product = 0.0;
                            for (var row = 0; row < k; row++) product += z[row] * _residual[i * k + row];
                            for (var j = 0; j < p; j++)
                            {
                                var entry = product * _solution[j * q + slot.Offset + c];
                                target[i, j] += entry;
                                target[j, i] += entry;
                            }
                        }
                    }
                }
            }
        }

        return result;
    }

    /// <summary>
    /// Predicted random effects b = Λu and their conditional standard deviations over σ (square roots of the diagonal of
    /// Λ(ΛZ'ZΛ + I)⁻¹Λ), for one term: row level, column effect; and ‖u‖² over all terms.
    /// </summary>
    public (double[][,] Effects, double[][,] RelativeSds, double SquaredEffects) RandomEffects()
    {
        var p = _data.FixedCount;
        var effects = _data.Terms.Select(term => new double[term.Levels.Length, term.Width]).ToArray();
        var sds = _data.Terms.Select(term => new double[term.Levels.Length, term.Width]).ToArray();
        var squared = 0.0;
        for (var b = 0; b < _data.Blocks.Length; b++)
        {
            var block = _data.Blocks[b];
            int q = block.Effects, k = block.Rows;
            SolveBlock(b);
            SpreadOverFixed(q, k);
            InvertBlock(b);
            var u = _spread.AsSpan(p * q, q);
            foreach (var entry in u) squared += entry * entry;
            foreach (var slot in block.Slots)
            {
                var term = _data.Terms[slot.Term];
                var lambda = _lambda[slot.Term];
                for (var r = 0; r < term.Width; r++)
                {
                    double effect = 0, variance = 0;
                    for (var c = 0; c <= r; c++) effect += lambda[c * term.Width + r] * u[slot.Offset + c];
                    for (var s = 0; s < q; s++)
                    {
                        var sum = 0.0;
                        for (var c = 0; c <= r; c++) sum += lambda[c * term.Width + r] * _inverse[s * q + slot.Offset + c];
                        variance += sum * sum;
                    }

                    effects[slot.Term][slot.Level, r] = effect / term.ColumnScale[r];
                    sds[slot.Term][slot.Level, r] = Math.Sqrt(variance) / term.ColumnScale[r];
                }
            }
        }

        return (effects, sds, squared);
    }
}
