namespace SquadAnalytics.Statistics;

public static partial class MixedModel
{
    /// <summary>T⁻¹ and β = T⁻¹(b + Q'y), b the coefficients that the kernel found for the residual response.</summary>
    private static (double[,] Root, double[] Beta) Coefficients(MixedDeviance deviance)
    {
        var p = deviance.Data.FixedCount;
        var triangle = deviance.Columns.Triangle;
        var root = new double[p, p];
        for (var c = 0; c < p; c++)
        {
            for (var j = c; j >= 0; j--)
            {
                var sum = j == c ? 1.0 : 0.0;
                for (var m = j + 1; m <= c; m++) sum -= triangle[m * p + j] * root[m, c];
                root[j, c] = sum / triangle[j * p + j];
            }
        }

        var beta = new double[p];
        for (var j = 0; j < p; j++)
        {
            for (var c = j; c < p; c++) beta[j] += root[j, c] * (deviance.Kernel.Beta[c] + deviance.Columns.Coefficients[c]);
        }

        return (root, beta);
    }

    private static double[,] Covariance(MixedDeviance deviance, double[,] root)
    {
        var p = deviance.Data.FixedCount;
        var half = new double[p, p];
        for (var i = 0; i < p; i++)
        {
            for (var c = 0; c < p; c++)
            {
                for (var j = i; j <= c; j++) half[i, c] += root[i, j] * deviance.Kernel.InverseTriangle[c * p + j];
            }
        }

        var covariance = new double[p, p];
        SmallMatrix.Add(covariance, SmallMatrix.Multiply(half, SmallMatrix.Transpose(half)), deviance.ResidualVariance);
        return covariance;
    }

    private static IReadOnlyList<VarianceComponent> Components(MixedDesign design, MixedBlocks data, double[] theta, double sigma, string criterion)
    {
        var components = new List<VarianceComponent>();
        for (var t = 0; t < data.Terms.Length; t++)
        {
            var term = data.Terms[t];
            for (var r = 0; r < term.Width; r++)
            {
                var column = design.RandomTerms[t].Columns[r];
                var sd = sigma * RelativeSd(term, theta, r) / term.ColumnScale[r];
                components.Add(new VarianceComponent(design.RandomTerms[t].Name, column.Name, new Estimate(sd, UnitOf(design, column), term.Levels.Length, $"linear mixed model, {criterion}")));
            }
        }

        return components;
    }

    private static IReadOnlyList<RandomCorrelation> CorrelationsOf(MixedDesign design, MixedBlocks data, double[] theta)
    {
        var correlations = new List<RandomCorrelation>();
        for (var t = 0; t < data.Terms.Length; t++)
        {
            var term = data.Terms[t];
            if (!term.Correlated) continue;
            var columns = design.RandomTerms[t].Columns;
            for (var second = 1; second < term.Width; second++)
            {
                for (var first = 0; first < second; first++)
                {
                    var norms = RelativeSd(term, theta, first) * RelativeSd(term, theta, second);
                    correlations.Add(new RandomCorrelation(design.RandomTerms[t].Name, columns[first].Name, columns[second].Name, norms > 0 ? Correlation(term, theta, first, second) : null));
                }
            }
        }

        return correlations;
    }

    private static IReadOnlyList<RandomEffect> Predictions(MixedDesign design, MixedBlocks data, double[][,] effects, double[][,] sds, double sigma)
    {
        var predictions = new List<RandomEffect>(effects.Sum(term => term.Length));
        for (var t = 0; t < data.Terms.Length; t++)
        {
            var term = data.Terms[t];
            for (var r = 0; r < term.Width; r++)
            {
                var column = design.RandomTerms[t].Columns[r];
                var unit = UnitOf(design, column);
                for (var level = 0; level < term.Levels.Length; level++)
                    predictions.Add(new RandomEffect(design.RandomTerms[t].Name, term.Levels[level], column.Name, effects[t][level, r], sigma * sds[t][level, r], unit));
            }
        }

        return predictions;
    }

    private static double[] Unscaled(MixedBlocks data, double[] theta)
    {
        var result = (double[])theta.Clone();
        foreach (var term in data.Terms)
        {
            for (var c = 0; c < term.Width; c++)
            {
                for (var r = c; r < term.Width; r++)
                {
                    if (term.ThetaIndex(r, c) is >= 0 and var index) result[index] /= term.ColumnScale[r];
                }
            }
        }

        return result;
    }

    /// <summary>The column of ones has no unit of its own: a random intercept is in the unit of the response.</summary>
    private static Unit UnitOf(MixedDesign design, DesignColumn column) => column.CoefficientUnit != Unit.None ? column.CoefficientUnit : UnitOfConstant(design, column);

    private static Unit UnitOfConstant(MixedDesign design, DesignColumn column) =>
        column.Array.All(entry => entry == 1 || entry == 0) ? design.Response.CoefficientUnit : Unit.None;

    /// <summary>Length of row r of the term's triangle: the SD of the scaled column over σ.</summary>
    private static double RelativeSd(MixedBlocks.Term term, double[] theta, int r)
    {
        var sum = 0.0;
        for (var c = 0; c <= r; c++)
        {
            if (term.ThetaIndex(r, c) is >= 0 and var index) sum += theta[index] * theta[index];
        }

        return Math.Sqrt(sum);
    }

    private static double Correlation(MixedBlocks.Term term, double[] theta, int first, int second)
    {
        var sum = 0.0;
        for (var c = 0; c <= first; c++) sum += theta[term.ThetaIndex(first, c)] * theta[term.ThetaIndex(second, c)];
        return sum / (RelativeSd(term, theta, first) * RelativeSd(term, theta, second));
    }
}
