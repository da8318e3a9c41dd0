namespace SquadAnalytics.Statistics;

/// <summary>Covariance of the fixed effects and the degrees of freedom of their contrasts.</summary>
internal abstract class FixedEffectInference(double[,] covariance)
{
    /// <summary>Covariance matrix of the coefficients.</summary>
    public double[,] Covariance { get; } = covariance;

    /// <summary>How it is named in results.</summary>
    public abstract string Name { get; }

    /// <summary>Degrees of freedom of one contrast; infinite for normal quantiles.</summary>
    public abstract double DegreesOfFreedom(ReadOnlySpan<double> weights);

    /// <summary>Joint test that all contrasts (rows, linearly independent) are 0.</summary>
    public abstract JointTest Test(double[][] contrasts, double[] coefficients);

    public double Variance(ReadOnlySpan<double> weights) => Quadratic(Covariance, weights);

    protected static double Quadratic(double[,] matrix, ReadOnlySpan<double> weights)
    {
        var sum = 0.0;
        for (var i = 0; i < weights.Length; i++)
        {
            for (var j = 0; j < weights.Length; j++) sum += weights[i] * matrix[i, j] * weights[j];
        }

        return sum;
    }

    /// <summary>Independent contrasts: eigenvectors of LCL' turned into weights, each with its estimate and variance.</summary>
    protected IReadOnlyList<IndependentContrast> Independent(double[][] contrasts, double[] coefficients)
    {
        var count = contrasts.Length;
        var middle = new double[count, count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                for (var a = 0; a < coefficients.Length; a++)
                {
                    for (var b = 0; b < coefficients.Length; b++) middle[i, j] += contrasts[i][a] * Covariance[a, b] * contrasts[j][b];
                }
            }
        }

        var eigen = SymmetricEigen.Of(middle);
        var largest = eigen.Values.Max();
        var result = new List<IndependentContrast>();
        for (var k = 0; k < count; k++)
        {
            if (eigen.Values[k] <= 1e-10 * largest) continue;
            var weights = new double[coefficients.Length];
            var estimate = 0.0;
            for (var a = 0; a < weights.Length; a++)
            {
                for (var i = 0; i < count; i++) weights[a] += eigen.Vectors[i, k] * contrasts[i][a];
                estimate += weights[a] * coefficients[a];
            }

            result.Add(new IndependentContrast(weights, estimate, eigen.Values[k]));
        }

        return result;
    }

    protected sealed record IndependentContrast(double[] Weights, double Estimate, double Variance);
}

/// <summary>Normal quantiles.</summary>
internal sealed class NormalInference(double[,] covariance) : FixedEffectInference(covariance)
{
    public override string Name => "normal quantiles";

    public override double DegreesOfFreedom(ReadOnlySpan<double> weights) => double.PositiveInfinity;

    public override JointTest Test(double[][] contrasts, double[] coefficients)
    {
        var parts = Independent(contrasts, coefficients);
        var chiSquared = parts.Sum(part => part.Estimate * part.Estimate / part.Variance);
        return new JointTest(chiSquared / parts.Count, parts.Count, null, ChiSquaredDistribution.UpperTail(chiSquared, parts.Count), "Wald chi-squared");
    }
}
