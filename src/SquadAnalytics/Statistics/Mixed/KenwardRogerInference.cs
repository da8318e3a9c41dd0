namespace SquadAnalytics.Statistics;

/// <summary>Kenward and Roger's adjusted covariance and degrees of freedom.</summary>
/// <remarks>
/// With V = Σ γ_k V_k, Φ = (X'V⁻¹X)⁻¹, P_k = -X'V⁻¹V_kV⁻¹X, Q_kl = X'V⁻¹V_kV⁻¹V_lV⁻¹X and W twice the inverse of
/// tr(V⁻¹V_kV⁻¹V_l) - 2tr(ΦQ_kl) + tr(ΦP_kΦP_l): the adjusted covariance is Φ + 2Φ Σ W_kl(Q_kl - P_kΦP_l) Φ; no second-derivative term
/// arises, because V is linear in γ. Scale and df of the F follow from A_1, A_2, B of the paper. Sources: Kenward and Roger (1997),
/// Biometrics 53:983-997; Halekoh and Højsgaard (2014), J Stat Softw 59(9) (both from memory).
/// </remarks>
internal sealed class KenwardRogerInference : FixedEffectInference
{
    private readonly double[,] _phi;
    private readonly double[][,] _phiPPhi;
    private readonly double[,] _w;

    private KenwardRogerInference(double[,] adjusted, double[,] phi, double[][,] phiPPhi, double[,] w)
        : base(adjusted)
    {
        _phi = phi;
        _phiPPhi = phiPPhi;
        _w = w;
    }

    public override string Name => "Kenward-Roger df";

    /// <param name="deviance">Evaluated at the minimum.</param>
    /// <param name="theta">θ at the minimum.</param>
    /// <param name="root">T⁻¹, which takes coefficients of the orthonormal columns to those of the columns.</param>
    public static KenwardRogerInference Of(MixedDeviance deviance, double[] theta, double[,] root)
    {
        var data = deviance.Data;
        var parts = Components.Of(data, theta, deviance.ResidualVariance);
        var p = data.FixedCount;
        var count = parts.Count;
        var phi = new double[p, p];
        for (var i = 0; i < p; i++)
        {
            var unit = new double[p];
            unit[i] = 1;
            var column = deviance.Kernel.CovarianceTimes(unit);
            for (var j = 0; j < p; j++) phi[j, i] = deviance.ResidualVariance * column[j];
        }

        var phiP = parts.P.Select(entry => SmallMatrix.Multiply(phi, entry)).ToArray();
        var information = new double[count, count];
        for (var k = 0; k < count; k++)
        {
            for (var l = 0; l < count; l++)
                information[k, l] = parts.Traces[k, l] - 2 * SmallMatrix.TraceOfProduct(phi, parts.Q[k, l]) + SmallMatrix.TraceOfProduct(phiP[k], phiP[l]);
        }

        // A boundary direction carries no information; its pseudo-inverse leaves it out.
        var eigen = SymmetricEigen.Of(Balanced(information, out var scale));
        var floor = 1e-10 * eigen.Values.Max();
        var w = eigen.Apply(value => value > floor ? 2 / value : 0);
        for (var k = 0; k < count; k++)
        {
            for (var l = 0; l < count; l++) w[k, l] *= scale[k] * scale[l];
        }

        var middle = new double[p, p];
        for (var k = 0; k < count; k++)
        {
            for (var l = 0; l < count; l++)
            {
                SmallMatrix.Add(middle, parts.Q[k, l], w[k, l]);
                SmallMatrix.Add(middle, SmallMatrix.Multiply(parts.P[k], phiP[l]), -w[k, l]);
            }
        }

        var adjusted = (double[,])phi.Clone();
        SmallMatrix.Add(adjusted, SmallMatrix.Multiply(SmallMatrix.Multiply(phi, middle), phi), 2);
        var rootTransposed = SmallMatrix.Transpose(root);
        double[,] Outward(double[,] inner) => SmallMatrix.Multiply(SmallMatrix.Multiply(root, inner), rootTransposed);
        return new KenwardRogerInference(Outward(adjusted), Outward(phi), phiP.Select(entry => Outward(SmallMatrix.Multiply(entry, phi))).ToArray(), w);
    }

    public override double DegreesOfFreedom(ReadOnlySpan<double> weights) => Moments([weights.ToArray()]).Df;

    public override JointTest Test(double[][] contrasts, double[] coefficients)
    {
        var parts = Independent(contrasts, coefficients);
        var (df, scale) = Moments([.. parts.Select(part => part.Weights)]);
        var f = scale * parts.Average(part => part.Estimate * part.Estimate / part.Variance);
        return new JointTest(f, parts.Count, df, FDistribution.UpperTail(f, parts.Count, df), Name);
    }

    /// <summary>Denominator df and scale of the F of the contrasts.</summary>
    private (double Df, double Scale) Moments(double[][] contrasts)
    {
        var l = contrasts.Length;
        var rows = new double[l, contrasts[0].Length];
        for (var i = 0; i < l; i++)
        {
            for (var j = 0; j < contrasts[i].Length; j++) rows[i, j] = contrasts[i][j];
        }

        var columns = SmallMatrix.Transpose(rows);
        var inverse = SmallMatrix.InverseOfPositive(SmallMatrix.Multiply(SmallMatrix.Multiply(rows, _phi), columns));
        var parts = _phiPPhi.Select(entry => SmallMatrix.Multiply(inverse, SmallMatrix.Multiply(SmallMatrix.Multiply(rows, entry), columns))).ToArray();
        double a1 = 0, a2 = 0;
        for (var k = 0; k < parts.Length; k++)
        {
            for (var m = 0; m < parts.Length; m++)
            {
                a1 += _w[k, m] * Trace(parts[k]) * Trace(parts[m]);
                a2 += _w[k, m] * SmallMatrix.TraceOfProduct(parts[k], parts[m]);
            }
        }

        var b = (a1 + 6 * a2) / (2 * l);
        var g = ((l + 1) * a1 - (l + 4) * a2) / ((l + 2) * a2);
        var divisor = 3 * l + 2 * (1 - g);
        double c1 = g / divisor, c2 = (l - g) / divisor, c3 = (l + 2 - g) / divisor;
        var v0 = 1 + c1 * b;
        if (Math.Abs(v0) < 1e-10) v0 = 0;
        var v1 = 1 - c2 * b;
        var v2 = 1 - c3 * b;

        // Where numerator and denominator vanish together (balanced cases) their ratio tends to 1.
        var quotient = Math.Abs(v1) < 1e-10 && Math.Abs(1 - a2 / l) < 1e-10 ? 1 : (1 - a2 / l) / v1;
        var rho = quotient * quotient * v0 / v2 / l;
        var df = 4 + (l + 2) / (l * rho - 1);
        var scale = Math.Abs(df - 2) < 1e-2 ? 1 : df * (1 - a2 / l) / (df - 2);
        return (df, scale);
    }

    private static double Trace(double[,] matrix)
    {
        var sum = 0.0;
        for (var i = 0; i < matrix.GetLength(0); i++) sum += matrix[i, i];
        return sum;
    }

    private static double[,] Balanced(double[,] matrix, out double[] scale)
    {
        var n = matrix.GetLength(0);
        scale = new double[n];
        for (var i = 0; i < n; i++) scale[i] = matrix[i, i] > 0 ? 1 / Math.Sqrt(matrix[i, i]) : 0;
        var result = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++) result[i, j] = matrix[i, j] * scale[i] * scale[j];
        }

        return result;
    }

    /// <summary>P, Q and the traces, summed over blocks; the last component is the residual variance.</summary>
    private sealed class Components
    {
        private Components(int count, int p)
        {
            Count = count;
            P = new double[count][,];
            Q = new double[count, count][,];
            Traces = new double[count, count];
            for (var k = 0; k < count; k++)
            {
                P[k] = new double[p, p];
                for (var l = 0; l < count; l++) Q[k, l] = new double[p, p];
            }
        }

        public int Count { get; }

        public double[][,] P { get; }

        public double[,][,] Q { get; }

        public double[,] Traces { get; }

        public static Components Of(MixedBlocks data, double[] theta, double residualVariance)
        {
            var p = data.FixedCount;
            var result = new Components(data.ThetaCount + 1, p);
            foreach (var block in data.Blocks) result.AddBlock(data, block, theta, residualVariance);
            var rest = new double[p, p];
            for (var i = 0; i < p; i++)
            {
                for (var j = 0; j < p; j++)
                {
                    for (var k = 0; k <= Math.Min(i, j); k++) rest[i, j] += data.BaseTriangle[i * (p + 1) + k] * data.BaseTriangle[j * (p + 1) + k];
                }
            }

            var last = data.ThetaCount;
            var square = residualVariance * residualVariance;
            result.Traces[last, last] += (data.Observations - data.Blocks.Sum(block => block.Rows)) / square;
            SmallMatrix.Add(result.P[last], rest, -1 / square);
            SmallMatrix.Add(result.Q[last, last], rest, 1 / (square * residualVariance));
            return result;
        }

        private void AddBlock(MixedBlocks data, MixedBlocks.Block block, double[] theta, double residualVariance)
        {
            int k = block.Rows, q = block.Effects, p = data.FixedCount;
            var effects = new double[k, q];
            var fixedRows = new double[k, p];
            for (var i = 0; i < k; i++)
            {
                for (var j = 0; j < q; j++) effects[i, j] = block.Data[j * k + i];
                for (var j = 0; j < p; j++) fixedRows[i, j] = block.Data[(q + j) * k + i];
            }

            var lambda = new double[q, q];
            foreach (var slot in block.Slots)
            {
                var term = data.Terms[slot.Term];
                for (var c = 0; c < term.Width; c++)
                {
                    for (var r = c; r < term.Width; r++)
                    {
                        if (term.ThetaIndex(r, c) is >= 0 and var index) lambda[slot.Offset + r, slot.Offset + c] = theta[index];
                    }
                }
            }

            var relative = SmallMatrix.Multiply(effects, lambda);
            var variance = SmallMatrix.Multiply(relative, SmallMatrix.Transpose(relative));
            for (var i = 0; i < k; i++) variance[i, i] += 1;
            var inverse = SmallMatrix.InverseOfPositive(variance);
            for (var i = 0; i < k; i++)
            {
                for (var j = 0; j < k; j++) inverse[i, j] /= residualVariance;
            }

            var parts = Parts(data, block, effects, k);
            var weighted = SmallMatrix.Multiply(inverse, fixedRows);
            var products = parts.Select(part => SmallMatrix.Multiply(inverse, part)).ToArray();
            var outer = parts.Select(part => SmallMatrix.Multiply(part, weighted)).ToArray();
            var inner = outer.Select(entry => SmallMatrix.Multiply(inverse, entry)).ToArray();
            for (var a = 0; a < Count; a++)
            {
                SmallMatrix.Add(P[a], SmallMatrix.Multiply(SmallMatrix.Transpose(weighted), outer[a]), -1);
                var transposed = SmallMatrix.Transpose(outer[a]);
                for (var b = 0; b < Count; b++)
                {
                    Traces[a, b] += SmallMatrix.TraceOfProduct(products[a], products[b]);
                    SmallMatrix.Add(Q[a, b], SmallMatrix.Multiply(transposed, inner[b]));
                }
            }
        }

        private double[][,] Parts(MixedBlocks data, MixedBlocks.Block block, double[,] effects, int k)
        {
            var parts = new double[Count][,];
            for (var m = 0; m < Count; m++) parts[m] = new double[k, k];
            for (var i = 0; i < k; i++) parts[^1][i, i] = 1;
            foreach (var slot in block.Slots)
            {
                var term = data.Terms[slot.Term];
                for (var c = 0; c < term.Width; c++)
                {
                    for (var r = c; r < term.Width; r++)
                    {
                        if (term.ThetaIndex(r, c) is < 0) continue;
                        var part = parts[term.ThetaIndex(r, c)];
                        for (var i = 0; i < k; i++)
                        {
                            for (var j = 0; j < k; j++)
                            {
                                part[i, j] += effects[i, slot.Offset + r] * effects[j, slot.Offset + c];
                                if (r != c) part[i, j] += effects[i, slot.Offset + c] * effects[j, slot.Offset + r];
                            }
                        }
                    }
                }
            }

            return parts;
        }
    }
}
