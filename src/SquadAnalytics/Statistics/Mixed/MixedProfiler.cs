namespace SquadAnalytics.Statistics;

/// <summary>Finds, parameter by parameter, where the profiled deviance has risen by the χ² quantile.</summary>
internal sealed class MixedProfiler
{
    private const double InnerTolerance = 1e-9;

    private readonly MixedFit _fit;
    private readonly ConfidenceLevel _level;
    private readonly double _cutoff;
    private readonly double _sigma;

    public MixedProfiler(MixedFit fit, ConfidenceLevel level)
    {
        _fit = fit;
        _level = level;
        var z = NormalDistribution.Quantile(level.UpperTailProbability);
        _cutoff = fit.Deviance + z * z;
        _sigma = fit.ResidualStandardDeviation.Value;
    }

    public IEnumerable<ProfiledParameter> FixedEffects()
    {
        var deviance = Deviance(_fit.Design);
        var start = Scaled(deviance, _fit.Theta);
        var p = deviance.Data.FixedCount;
        var triangle = deviance.Columns.Triangle;
        for (var j = 0; j < p; j++)
        {
            // Row j of T⁻¹ as a direction among the orthonormal columns, and what the columns' share of the response adds.
            var direction = new double[p];
            direction[j] = 1 / triangle[j * p + j];
            for (var c = j + 1; c < p; c++)
            {
                for (var m = j; m < c; m++) direction[c] -= triangle[c * p + m] * direction[m];
                direction[c] /= triangle[c * p + c];
            }

            var offset = 0.0;
            for (var c = j; c < p; c++) offset += direction[c] * deviance.Columns.Coefficients[c];
            double At(double value) => Minimum(start, (point, gradient) =>
            {
                deviance.Kernel.Evaluate(point, new FixedConstraint(direction, value - offset));
                deviance.Kernel.EvaluateGradient();
                for (var k = 0; k < gradient.Length; k++) gradient[k] = deviance.Kernel.LogDetZGradient[k] + deviance.Divisor / deviance.Kernel.Rss * deviance.Kernel.RssGradient[k];
                return deviance.Kernel.LogDetZ + deviance.Divisor * (1 + Math.Log(2 * Math.PI * deviance.ResidualVariance));
            });
            var estimate = _fit.FixedEffects[j].Estimate;
            var step = estimate.StandardError!.Value;
            yield return new ProfiledParameter(
                ProfiledKind.FixedEffect, null, _fit.FixedEffects[j].Name, null,
                Limits(estimate.Value, estimate.Unit, Search(At, estimate.Value, -step, null), Search(At, estimate.Value, step, null)));
        }
    }

    public ProfiledParameter Residual()
    {
        var deviance = Deviance(_fit.Design);
        var start = Scaled(deviance, _fit.Theta);
        double At(double sigma) => Minimum(start, (point, gradient) => Unprofiled(deviance, point, sigma, gradient));
        return new ProfiledParameter(
            ProfiledKind.ResidualStandardDeviation, null, _fit.Design.Response.Name, null,
            Limits(_sigma, _fit.Design.Response.CoefficientUnit, Search(At, _sigma, -_sigma / 8, 0.01 * _sigma), Search(At, _sigma, _sigma / 8, null)));
    }

    public IEnumerable<ProfiledParameter> StandardDeviationsAndCorrelations()
    {
        for (var t = 0; t < _fit.Design.RandomTerms.Count; t++)
        {
            var term = _fit.Design.RandomTerms[t];
            for (var r = 0; r < term.Columns.Count; r++)
            {
                yield return StandardDeviation(t, r);
                if (!term.Correlated) continue;
                for (var other = 0; other < r; other++) yield return Correlation(t, other, r);
            }
        }
    }

    public ProfiledParameter StandardDeviation(int t, int r)
    {
        var (deviance, start) = Reordered(t, r, null);
        var data = deviance.Data;
        var held = data.Terms[t].ThetaIndex(0, 0);
        var scale = data.Terms[t].ColumnScale[0];
        var component = _fit.VarianceComponents.Single(entry => entry.Term == _fit.Design.RandomTerms[t].Name && entry.Column == _fit.Design.RandomTerms[t].Columns[r].Name);
        var theta = new double[start.Length];
        var inner = new double[start.Length];

        // Free: θ without the held element, and ln σ in its place; the held element is s·scale/σ.
        var free = (double[])start.Clone();
        free[held] = Math.Log(_sigma);
        double At(double sd) => Minimum(free, (point, gradient) =>
        {
            var sigma = Math.Exp(point[held]);
            point.CopyTo(theta);
            theta[held] = sd * scale / sigma;
            var value = Unprofiled(deviance, theta, sigma, inner);
            inner.CopyTo(gradient);
            gradient[held] = 2 * data.Observations - 2 * deviance.Kernel.Rss / (sigma * sigma) - inner[held] * theta[held];
            return value;
        });
        var estimate = component.StandardDeviation.Value;
        var step = Math.Max(estimate / 4, 0.05 * _sigma / scale);
        return new ProfiledParameter(
            ProfiledKind.RandomStandardDeviation, component.Term, component.Column, null,
            Limits(estimate, component.StandardDeviation.Unit, Search(At, estimate, -step, 0), Search(At, estimate, step, null)));
    }

    private ProfiledParameter Correlation(int t, int first, int second)
    {
        var (deviance, start) = Reordered(t, first, second);
        var term = deviance.Data.Terms[t];
        int off = term.ThetaIndex(1, 0), own = term.ThetaIndex(1, 1);
        var theta = new double[start.Length];
        var inner = new double[start.Length];

        // Free: the length of the second row in place of its own element; its direction is held by the correlation.
        var free = (double[])start.Clone();
        free[own] = Math.Sqrt(start[off] * start[off] + start[own] * start[own]);
        free[off] = 0;
        double At(double correlation)
        {
            var rest = Math.Sqrt(Math.Max(0, 1 - correlation * correlation));
            return Minimum(free, (point, gradient) =>
            {
                point.CopyTo(theta);
                theta[off] = point[own] * correlation;
                theta[own] = point[own] * rest;
                var value = deviance.Value(theta, inner);
                inner.CopyTo(gradient);
                gradient[own] = inner[off] * correlation + inner[own] * rest;

                // The place of the held element is idle; a weak pull keeps its curvature from being 0.
                gradient[off] = 2 * point[off];
                return value + point[off] * point[off];
            });
        }

        var columns = _fit.Design.RandomTerms[t].Columns;
        var name = _fit.Design.RandomTerms[t].Name;
        var estimate = _fit.Correlations.Single(entry => entry.Term == name && entry.First == columns[first].Name && entry.Second == columns[second].Name).Correlation ?? 0;
        return new ProfiledParameter(
            ProfiledKind.RandomCorrelation, name, columns[first].Name, columns[second].Name,
            Limits(estimate, Unit.None, Search(At, estimate, -0.25, -1), Search(At, estimate, 0.25, 1)));
    }

    /// <summary>Where the profile crosses the cutoff, going from the estimate in doubling steps; the edge where it never does.</summary>
    private double Search(Func<double, double> profile, double estimate, double step, double? edge)
    {
        var near = estimate;
        for (var doubling = 0; doubling < 60; doubling++)
        {
            var far = near + step;
            var atEdge = edge is { } end && (step < 0 ? far <= end : far >= end);
            if (atEdge) far = edge!.Value;
            if (profile(far) > _cutoff)
                return BracketedRoot.Find(value => profile(value) - _cutoff, Math.Min(near, far), Math.Max(near, far), 1e-7 * Math.Max(Math.Abs(far), Math.Abs(step)));
            if (atEdge) return far;
            near = far;
            step *= 2;
        }

        throw new ArithmeticException("The profile does not reach the cutoff.");
    }

    private Estimate Limits(double value, Unit unit, double lower, double upper) =>
        new(value, unit, _fit.Observations, "linear mixed model, ML, profile limits") { Interval = new Interval(Math.Min(lower, value), Math.Max(upper, value), _level) };

    private static double Minimum(double[] start, Objective objective) => QuasiNewton.Minimize(objective, start, InnerTolerance).Value;

    /// <summary>log|ΛZ'ZΛ + I| + n ln(2πσ²) + r²/σ² and its gradient in θ.</summary>
    private static double Unprofiled(MixedDeviance deviance, ReadOnlySpan<double> theta, double sigma, Span<double> gradient)
    {
        var kernel = deviance.Kernel;
        kernel.Evaluate(theta);
        kernel.EvaluateGradient();
        var variance = sigma * sigma;
        for (var k = 0; k < gradient.Length; k++) gradient[k] = kernel.LogDetZGradient[k] + kernel.RssGradient[k] / variance;
        return kernel.LogDetZ + deviance.Data.Observations * Math.Log(2 * Math.PI * variance) + kernel.Rss / variance;
    }

    /// <summary>The model with one term's columns in another order, and its θ at the maximum.</summary>
    private (MixedDeviance Deviance, double[] Theta) Reordered(int t, int first, int? second)
    {
        var term = _fit.Design.RandomTerms[t];
        int[] leading = second is { } next ? [first, next] : [first];
        int[] order = [.. leading, .. Enumerable.Range(0, term.Columns.Count).Except(leading)];
        var reordered = term.WithColumns([.. order.Select(k => term.Columns[k])]);
        var deviance = Deviance(_fit.Design.With([.. _fit.Design.RandomTerms.Select((old, k) => k == t ? reordered : old)]));
        return (deviance, MixedSearch.Run(deviance).Theta);
    }

    private static MixedDeviance Deviance(MixedDesign design)
    {
        var columns = OrthonormalColumns.Of([.. design.FixedEffects.Select(column => column.Array)], design.Response.Array);
        return new MixedDeviance(MixedBlocks.Of(design, columns).GetOrThrow(), columns, MixedCriterion.MaximumLikelihood);
    }

    private static double[] Scaled(MixedDeviance deviance, IReadOnlyList<double> theta)
    {
        double[] scaled = [.. theta];
        foreach (var term in deviance.Data.Terms)
        {
            for (var c = 0; c < term.Width; c++)
            {
                for (var r = c; r < term.Width; r++)
                {
                    if (term.ThetaIndex(r, c) is >= 0 and var index) scaled[index] *= term.ColumnScale[r];
                }
            }
        }

        return scaled;
    }
}
