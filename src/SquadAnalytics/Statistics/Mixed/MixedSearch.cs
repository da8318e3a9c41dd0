namespace SquadAnalytics.Statistics;

/// <summary>Finds the θ at which the profiled deviance is smallest, and the curvature there.</summary>
internal sealed class MixedSearch
{
    private const int MaximumRestarts = 4;
    private const double NegligibleTheta = 1e-5;

    private MixedSearch(double[] theta, double deviance, bool converged, double[,] logDetHessian, double[,] rssHessian)
    {
        Theta = theta;
        Deviance = deviance;
        Converged = converged;
        LogDetHessian = logDetHessian;
        RssHessian = rssHessian;
    }

    /// <summary>θ at the minimum; columns of Λ carry the sign that makes their diagonal positive.</summary>
    public double[] Theta { get; }

    public double Deviance { get; }

    public bool Converged { get; }

    /// <summary>Second derivatives of the log determinants.</summary>
    public double[,] LogDetHessian { get; }

    /// <summary>Second derivatives of r².</summary>
    public double[,] RssHessian { get; }

    /// <summary>
    /// Searches. θ is left unbounded, because the deviance is even in each column of Λ: a bound at 0 would only hide that the
    /// function is smooth there; the sign is mended afterwards, and diagonal elements within rounding of 0 are set to 0.
    /// </summary>
    public static MixedSearch Run(MixedDeviance deviance)
    {
        var start = Start(deviance);
        var best = QuasiNewton.Minimize(deviance.Value, start);
        for (var restart = 0; ; restart++)
        {
            var theta = Canonical(deviance, best.Point);
            theta = Snapped(deviance, theta, best.Value);
            var (logDet, rss) = Curvature(deviance, theta);
            var value = deviance.Value(theta);
            var escape = Downhill(deviance, theta, logDet, rss);
            if (escape is null || restart == MaximumRestarts)
            {
                deviance.Kernel.EvaluateGradient();
                return new MixedSearch(theta, value, best.Converged && escape is null, logDet, rss);
            }

            best = QuasiNewton.Minimize(deviance.Value, escape);
        }
    }

    /// <summary>Starts at equal relative SDs of 1 and moves each variance by the ratio of observed to expected squares of its effects, twice.</summary>
    private static double[] Start(MixedDeviance deviance)
    {
        var theta = new double[deviance.Data.ThetaCount];
        var diagonal = Diagonal(deviance.Data).ToArray();
        foreach (var index in diagonal) theta[index] = 1;
        var gradient = new double[theta.Length];
        for (var step = 0; step < 2; step++)
        {
            deviance.Value(theta, gradient);
            foreach (var index in diagonal)
            {
                var expected = deviance.LogDeterminantGradient(index);
                var observed = -deviance.Kernel.RssGradient[index] / deviance.ResidualVariance;
                var ratio = expected > 0 ? observed / expected : 1;
                theta[index] *= Math.Sqrt(Math.Clamp(ratio, 0.01, 1e4));
            }
        }

        return theta;
    }

    private static IEnumerable<int> Diagonal(MixedBlocks data) => data.Terms.SelectMany(term => Enumerable.Range(0, term.Width).Select(r => term.ThetaIndex(r, r)));

    private static double[] Canonical(MixedDeviance deviance, double[] point)
    {
        var theta = (double[])point.Clone();
        foreach (var term in deviance.Data.Terms)
        {
            for (var c = 0; c < term.Width; c++)
            {
                if (theta[term.ThetaIndex(c, c)] >= 0) continue;
                for (var r = c; r < term.Width; r++)
                {
                    if (term.ThetaIndex(r, c) is >= 0 and var index) theta[index] = -theta[index];
                }
            }
        }

        return theta;
    }

    private static double[] Snapped(MixedDeviance deviance, double[] theta, double value)
    {
        foreach (var index in Diagonal(deviance.Data))
        {
            if (theta[index] == 0 || theta[index] > NegligibleTheta) continue;
            var zeroed = (double[])theta.Clone();
            zeroed[index] = 0;
            if (deviance.Value(zeroed) <= value + 1e-8) theta = zeroed;
        }

        return theta;
    }

    /// <summary>Second derivatives of the two parts by central differences of the exact gradients.</summary>
    private static (double[,] LogDet, double[,] Rss) Curvature(MixedDeviance deviance, double[] theta)
    {
        var n = theta.Length;
        var logDet = new double[n, n];
        var rss = new double[n, n];
        var there = (double[])theta.Clone();
        for (var j = 0; j < n; j++)
        {
            var step = 1e-3 * Math.Max(Math.Abs(theta[j]), 0.05);
            foreach (var side in (ReadOnlySpan<double>)[1, -1])
            {
                there[j] = theta[j] + side * step;
                deviance.Kernel.Evaluate(there);
                deviance.Kernel.EvaluateGradient();
                for (var k = 0; k < n; k++)
                {
                    var weight = side / (4 * step);
                    logDet[j, k] += weight * deviance.LogDeterminantGradient(k);
                    logDet[k, j] += weight * deviance.LogDeterminantGradient(k);
                    rss[j, k] += weight * deviance.Kernel.RssGradient[k];
                    rss[k, j] += weight * deviance.Kernel.RssGradient[k];
                }
            }

            there[j] = theta[j];
        }

        return (logDet, rss);
    }

    /// <summary>A point to go on from where the curvature shows a saddle (or a step that still pays), or null at a minimum.</summary>
    private static double[]? Downhill(MixedDeviance deviance, double[] theta, double[,] logDet, double[,] rss)
    {
        var n = theta.Length;
        var gradient = new double[n];
        var value = deviance.Value(theta, gradient);
        var m = deviance.Divisor;
        var total = deviance.Kernel.Rss;
        var hessian = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            for (var k = 0; k < n; k++)
                hessian[j, k] = logDet[j, k] + m * (rss[j, k] / total - deviance.Kernel.RssGradient[j] * deviance.Kernel.RssGradient[k] / (total * total));
        }

        var eigen = SymmetricEigen.Of(hessian);
        var largest = Math.Max(eigen.Values.Max(Math.Abs), 1e-300);
        for (var k = 0; k < n; k++)
        {
            double slope = 0;
            for (var j = 0; j < n; j++) slope += eigen.Vectors[j, k] * gradient[j];
            var negative = eigen.Values[k] < -1e-6 * largest;
            if (!negative && slope * slope <= 1e-8 * Math.Max(eigen.Values[k], 1e-6 * largest)) continue;
            var length = negative ? 0.1 : Math.Abs(slope) / Math.Max(eigen.Values[k], 1e-6 * largest);
            foreach (var side in (ReadOnlySpan<double>)[slope > 0 ? -1 : 1, slope > 0 ? 1 : -1])
            {
                var there = theta.Select((entry, j) => entry + side * length * eigen.Vectors[j, k]).ToArray();
                if (deviance.Value(there) < value - 1e-9) return there;
            }
        }

        deviance.Value(theta, gradient);
        return null;
    }
}
