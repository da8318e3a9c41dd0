namespace SquadAnalytics.Statistics;

/// <summary>Evaluates the parts of the profiled deviance of a mixed model, and their gradients, at a relative covariance factor θ.</summary>
/// <remarks>
/// Penalised least squares: r²(θ) = min over β, u of ‖y - Xβ - ZΛu‖² + ‖u‖²; with R from the QR of [ZΛ; I], log|ΛZ'ZΛ + I| = 2 Σ log |R_jj|,
/// and with R_X from what is left of X, log|X'V⁻¹X| = 2 Σ log |R_X,jj|, V = I + ZΛΛ'Z'. Gradients follow from the minimum: for any
/// right-hand side with solution u and residual e, d r²/dΛ = -2 Z'e u'. Source: Bates et al. (2015), J Stat Softw 67(1) (from memory).
/// One instance is not for several threads: it holds its work space.
/// </remarks>
internal sealed partial class MixedKernel
{
    private readonly MixedBlocks _data;
    private readonly double[] _factors;
    private readonly double[] _relative;
    private readonly int[] _factorStart;
    private readonly int[] _relativeStart;
    private readonly double[] _rows;
    private readonly double[] _triangle;
    private readonly double[][] _lambda;

    public MixedKernel(MixedBlocks data)
    {
        _data = data;
        var p = data.FixedCount;
        _factorStart = new int[data.Blocks.Length];
        _relativeStart = new int[data.Blocks.Length];
        int factors = 0, relative = 0, rows = 0, largest = 0;
        for (var b = 0; b < data.Blocks.Length; b++)
        {
            var block = data.Blocks[b];
            var width = block.Effects + p + 1;
            _factorStart[b] = factors;
            _relativeStart[b] = relative;
            factors += block.Effects * width;
            relative += block.Rows * block.Effects;
            rows = Math.Max(rows, block.Rows * width);
            largest = Math.Max(largest, block.Effects);
        }

        _factors = new double[factors];
        _relative = new double[relative];
        _rows = new double[rows];
        _triangle = new double[(p + 1) * (p + 1)];
        _lambda = data.Terms.Select(term => new double[term.Width * term.Width]).ToArray();
        Beta = new double[p];
        InverseTriangle = new double[p * p];
        LogDetZGradient = new double[data.ThetaCount];
        LogDetXGradient = new double[data.ThetaCount];
        RssGradient = new double[data.ThetaCount];
        var q = largest;
        _solution = new double[q * (p + 1)];
        _residual = new double[q * (p + 1)];
        _spread = new double[q * (p + 1)];
        _spreadResidual = new double[q * (p + 1)];
        _inverse = new double[q * q];
        _inverseResidual = new double[q * q];
    }

    public int ThetaCount => _data.ThetaCount;

    /// <summary>Evaluations so far, gradients included.</summary>
    public int Evaluations { get; private set; }

    /// <summary>log|ΛZ'ZΛ + I|.</summary>
    public double LogDetZ { get; private set; }

    /// <summary>log|X'V⁻¹X| of the orthonormal columns.</summary>
    public double LogDetX { get; private set; }

    /// <summary>r²(θ), the penalised residual sum of squares.</summary>
    public double Rss { get; private set; }

    /// <summary>Coefficients of the orthonormal columns, for the residual response.</summary>
    public double[] Beta { get; }

    /// <summary>R_X⁻¹, upper triangular, column by column: (X'V⁻¹X)⁻¹ = R_X⁻¹R_X⁻ᵀ.</summary>
    public double[] InverseTriangle { get; }

    public double[] LogDetZGradient { get; }

    public double[] LogDetXGradient { get; }

    public double[] RssGradient { get; }

    /// <summary>Evaluates the parts at θ; with a constraint the fixed effects are held to one value of one linear combination.</summary>
    public void Evaluate(ReadOnlySpan<double> theta, FixedConstraint? constraint = null)
    {
        Evaluations++;
        SetLambda(theta);
        var p = _data.FixedCount;
        _data.BaseTriangle.CopyTo(_triangle.AsSpan());
        var logDet = 0.0;
        var product = 1.0;
        unchecked
        {
            for (var b = 0; b < _data.Blocks.Length; b++)
            {
                var block = _data.Blocks[b];
                int q = block.Effects, k = block.Rows, width = q + p + 1;
                var factor = _factors.AsSpan(_factorStart[b], q * width);
                factor.Clear();
                for (var j = 0; j < q; j++) factor[j * q + j] = 1;
                var rows = _rows.AsSpan(0, k * width);
                var relative = _relative.AsSpan(_relativeStart[b], k * q);
                MultiplyByLambda(block, relative);
                relative.CopyTo(rows);
                block.Data.AsSpan(k * q).CopyTo(rows[(k * q)..]);
                TriangularUpdate.Append(factor, q, rows, k, k, width, q);
                if (block.LogDetWeight > 1)
                {
                    for (var j = 0; j < q; j++) logDet += block.LogDetWeight * Math.Log(Math.Abs(factor[j * q + j]));
                }

                for (var j = 0; j < q && block.LogDetWeight == 1; j++)
                {
                    product *= factor[j * q + j];
                    if (Math.Abs(product) is < 1e100 and > 1e-100) continue;
                    logDet += Math.Log(Math.Abs(product));
                    product = 1;
                }

                TriangularUpdate.Append(_triangle, p + 1, rows[(k * q)..], k, k, p + 1, p + 1);
            }
        }

        LogDetZ = 2 * (logDet + Math.Log(Math.Abs(product)));
        SolveFixed(constraint);
    }

    private void SetLambda(ReadOnlySpan<double> theta)
    {
        for (var t = 0; t < _lambda.Length; t++)
        {
            var term = _data.Terms[t];
            for (var c = 0; c < term.Width; c++)
            {
                for (var r = c; r < term.Width; r++)
                {
                    var index = term.ThetaIndex(r, c);
                    _lambda[t][c * term.Width + r] = index < 0 ? 0 : theta[index];
                }
            }
        }
    }

    private void MultiplyByLambda(MixedBlocks.Block block, Span<double> relative)
    {
        unchecked
        {
            var k = block.Rows;
            ReadOnlySpan<double> data = block.Data;
            relative.Clear();
            foreach (var slot in block.Slots)
            {
                var lambda = _lambda[slot.Term];
                var width = _data.Terms[slot.Term].Width;
                for (var c = 0; c < width; c++)
                {
                    var target = relative.Slice((slot.Offset + c) * k, k);
                    for (var r = c; r < width; r++)
                    {
                        var weight = lambda[c * width + r];
                        if (weight == 0) continue;
                        var source = data.Slice((slot.Offset + r) * k, k);
                        for (var i = 0; i < k; i++) target[i] += weight * source[i];
                    }
                }
            }
        }
    }

    private void SolveFixed(FixedConstraint? constraint)
    {
        var p = _data.FixedCount;
        LogDetX = 0;
        for (var j = 0; j < p; j++) LogDetX += 2 * Math.Log(Math.Abs(_triangle[j * (p + 1) + j]));
        for (var j = p - 1; j >= 0; j--)
        {
            var sum = _triangle[p * (p + 1) + j];
            for (var c = j + 1; c < p; c++) sum -= _triangle[c * (p + 1) + j] * Beta[c];
            Beta[j] = sum / _triangle[j * (p + 1) + j];
        }

        // Columns of the inverse triangle: R v = e_c.
        Array.Clear(InverseTriangle);
        for (var c = 0; c < p; c++)
        {
            for (var j = c; j >= 0; j--)
            {
                var sum = j == c ? 1.0 : 0.0;
                for (var m = j + 1; m <= c; m++) sum -= _triangle[m * (p + 1) + j] * InverseTriangle[c * p + m];
                InverseTriangle[c * p + j] = sum / _triangle[j * (p + 1) + j];
            }
        }

        var rest = _triangle[p * (p + 1) + p];
        Rss = rest * rest;
        if (constraint is null) return;
        var direction = CovarianceTimes(constraint.Direction);
        double along = 0, variance = 0;
        for (var j = 0; j < p; j++)
        {
            along += constraint.Direction[j] * Beta[j];
            variance += constraint.Direction[j] * direction[j];
        }

        var gap = constraint.Target - along;
        for (var j = 0; j < p; j++) Beta[j] += direction[j] * gap / variance;
        Rss += gap * gap / variance;
    }

    /// <summary>(X'V⁻¹X)⁻¹ times a vector.</summary>
    public double[] CovarianceTimes(ReadOnlySpan<double> vector)
    {
        var p = _data.FixedCount;
        var result = new double[p];
        for (var c = 0; c < p; c++)
        {
            var product = 0.0;
            for (var j = 0; j <= c; j++) product += InverseTriangle[c * p + j] * vector[j];
            for (var j = 0; j <= c; j++) result[j] += InverseTriangle[c * p + j] * product;
        }

        return result;
    }
}

/// <summary>Holds direction'β at a target, in the orthonormal columns and for the residual response.</summary>
internal sealed record FixedConstraint(double[] Direction, double Target);
