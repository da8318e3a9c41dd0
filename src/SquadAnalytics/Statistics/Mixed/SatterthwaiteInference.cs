namespace SquadAnalytics.Statistics;

/// <summary>Satterthwaite degrees of freedom: 2v²/Var(v), v the estimated variance of the contrast.</summary>
/// <remarks>
/// Var(v) = g'Ag by the delta method, g the gradient of v in (θ, σ) and A = 2H⁻¹, H the Hessian of the deviance in (θ, σ). Several contrasts
/// are tested by their independent combinations, whose df are merged as Fai and Cornelius (1996), J Stat Comput Simul 54:363-378, propose (from
/// memory). Sources: Satterthwaite (1946), Biometrics Bulletin 2:110-114; Kuznetsova et al. (2017), J Stat Softw 82(13) (both from memory).
/// </remarks>
internal sealed class SatterthwaiteInference : FixedEffectInference
{
    private readonly double[][,] _derivatives;
    private readonly double[,] _parameterCovariance;

    private SatterthwaiteInference(double[,] covariance, double[][,] derivatives, double[,] parameterCovariance)
        : base(covariance)
    {
        _derivatives = derivatives;
        _parameterCovariance = parameterCovariance;
    }

    public override string Name => "Satterthwaite df";

    /// <param name="deviance">Evaluated, gradients included, at the minimum.</param>
    /// <param name="search">The minimum and its curvature.</param>
    /// <param name="covariance">Covariance of the coefficients.</param>
    /// <param name="root">T⁻¹, which takes coefficients of the orthonormal columns to those of the columns.</param>
    public static SatterthwaiteInference Of(MixedDeviance deviance, MixedSearch search, double[,] covariance, double[,] root)
    {
        var kernel = deviance.Kernel;
        var count = kernel.ThetaCount;
        var variance = deviance.ResidualVariance;
        var sigma = Math.Sqrt(variance);
        var hessian = new double[count + 1, count + 1];
        for (var j = 0; j < count; j++)
        {
            for (var k = 0; k < count; k++) hessian[j, k] = search.LogDetHessian[j, k] + search.RssHessian[j, k] / variance;
            hessian[j, count] = hessian[count, j] = -2 * kernel.RssGradient[j] / (variance * sigma);
        }

        hessian[count, count] = 4 * deviance.Divisor / variance;
        var eigen = SymmetricEigen.Of(hessian);
        var floor = 1e-8 * eigen.Values.Max();
        var parameterCovariance = eigen.Apply(value => value > floor ? 2 / value : 0);

        // d C / dθ = σ² T⁻¹ Φ D Φ T⁻ᵀ.
        var p = deviance.Data.FixedCount;
        var scaled = new double[p, p];
        for (var i = 0; i < p; i++)
        {
            var unit = new double[p];
            unit[i] = 1;
            var column = kernel.CovarianceTimes(unit);
            for (var a = 0; a < p; a++)
            {
                for (var b = 0; b < p; b++) scaled[a, i] += root[a, b] * column[b];
            }
        }

        var derivatives = kernel.FixedDerivatives().Select(inner => Sandwich(scaled, inner, variance)).Append(Scaled(covariance, 2 / sigma)).ToArray();
        return new SatterthwaiteInference(covariance, derivatives, parameterCovariance);
    }

    public override double DegreesOfFreedom(ReadOnlySpan<double> weights)
    {
        var gradient = new double[_derivatives.Length];
        for (var m = 0; m < gradient.Length; m++) gradient[m] = Quadratic(_derivatives[m], weights);
        var variance = Variance(weights);
        return 2 * variance * variance / Quadratic(_parameterCovariance, gradient);
    }

    public override JointTest Test(double[][] contrasts, double[] coefficients)
    {
        var parts = Independent(contrasts, coefficients);
        var f = parts.Average(part => part.Estimate * part.Estimate / part.Variance);
        var dfs = parts.Select(part => DegreesOfFreedom(part.Weights)).ToArray();
        var df = Merged(dfs);
        return new JointTest(f, parts.Count, df, FDistribution.UpperTail(f, parts.Count, df), Name);
    }

    /// <summary>The df of an F whose independent squared t's have these df: its mean is matched.</summary>
    private static double Merged(double[] dfs)
    {
        if (dfs.Max() - dfs.Min() < 1e-6 * dfs.Max()) return dfs.Average();
        if (dfs.Min() <= 2) return 2;
        var expectation = dfs.Sum(df => df / (df - 2));
        return 2 * expectation / (expectation - dfs.Length);
    }

    private static double[,] Sandwich(double[,] outer, double[,] inner, double factor)
    {
        var p = outer.GetLength(0);
        var half = new double[p, p];
        var result = new double[p, p];
        for (var i = 0; i < p; i++)
        {
            for (var j = 0; j < p; j++)
            {
                for (var k = 0; k < p; k++) half[i, j] += outer[i, k] * inner[k, j];
            }
        }

        for (var i = 0; i < p; i++)
        {
            for (var j = 0; j < p; j++)
            {
                for (var k = 0; k < p; k++) result[i, j] += factor * half[i, k] * outer[j, k];
            }
        }

        return result;
    }

    private static double[,] Scaled(double[,] matrix, double factor)
    {
        var result = (double[,])matrix.Clone();
        for (var i = 0; i < matrix.GetLength(0); i++)
        {
            for (var j = 0; j < matrix.GetLength(1); j++) result[i, j] *= factor;
        }

        return result;
    }
}
