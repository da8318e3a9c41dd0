namespace SquadAnalytics.Statistics;

/// <summary>A function to minimise: returns its value at a point and writes its gradient there.</summary>
internal delegate double Objective(ReadOnlySpan<double> point, Span<double> gradient);

/// <summary>Minimises a smooth function of few variables by BFGS with backtracking, started from a difference Hessian.</summary>
/// <remarks>Source: Nocedal and Wright (2006), Numerical Optimization, 2nd edition (from memory).</remarks>
internal static class QuasiNewton
{
    private const int MaximumIterations = 200;
    private const double Sufficient = 1e-4;

    /// <summary>Where a search ended.</summary>
    /// <param name="Point">The point.</param>
    /// <param name="Value">The function there.</param>
    /// <param name="Decrement">Twice the further decrease that a quadratic model promises.</param>
    /// <param name="Converged">Whether that is below the tolerance.</param>
    internal sealed record Minimum(double[] Point, double Value, double Decrement, bool Converged);

    /// <summary>Searches from a start until the promised decrease is below the tolerance (in the unit of the function).</summary>
    public static Minimum Minimize(Objective objective, ReadOnlySpan<double> start, double tolerance = 1e-11)
    {
        var n = start.Length;
        var point = start.ToArray();
        var gradient = new double[n];
        var value = objective(point, gradient);
        if (n == 0) return new Minimum(point, value, 0, true);
        var inverse = InverseHessian(objective, point, gradient);
        var restarted = true;
        var trial = new double[n];
        var trialGradient = new double[n];
        var decrement = double.PositiveInfinity;
        for (var iteration = 0; iteration < MaximumIterations; iteration++)
        {
            var direction = Product(inverse, gradient);
            decrement = 0;
            for (var j = 0; j < n; j++)
            {
                direction[j] = -direction[j];
                decrement -= direction[j] * gradient[j];
            }

            if (decrement <= tolerance && decrement >= 0) return new Minimum(point, value, decrement, true);
            if (decrement < 0 || !LineSearch(objective, point, value, direction, -decrement, trial, trialGradient, out var trialValue))
            {
                // The quadratic model has gone stale (or rounding has the last word): look once more with a fresh one.
                if (restarted) break;
                inverse = InverseHessian(objective, point, gradient);
                restarted = true;
                continue;
            }

            restarted = false;
            Update(inverse, point, trial, gradient, trialGradient);
            trial.CopyTo(point, 0);
            trialGradient.CopyTo(gradient, 0);
            value = trialValue;
        }

        // A decrease that the rounding of the function hides cannot be taken.
        return new Minimum(point, value, decrement, decrement is >= 0 && decrement <= 1e-9 * (1 + Math.Abs(value)));
    }

    private static bool LineSearch(
        Objective objective, double[] point, double value, double[] direction, double slope, double[] trial, double[] trialGradient, out double trialValue)
    {
        var noise = 4e-16 * (1 + Math.Abs(value));
        var step = 1.0;
        for (var j = 0; j < point.Length; j++)
        {
            var allowed = 2 * Math.Max(Math.Abs(point[j]), 1);
            if (Math.Abs(direction[j]) * step > allowed) step = allowed / Math.Abs(direction[j]);
        }

        for (var k = 0; k < 40; k++)
        {
            for (var j = 0; j < point.Length; j++) trial[j] = point[j] + step * direction[j];
            trialValue = objective(trial, trialGradient);
            if (double.IsFinite(trialValue) && trialValue <= value + Sufficient * step * slope + noise) return true;
            var quadratic = -slope * step * step / (2 * (trialValue - value - slope * step));
            step = double.IsFinite(quadratic) ? Math.Clamp(quadratic, 0.1 * step, 0.5 * step) : 0.1 * step;
        }

        trialValue = value;
        return false;
    }

    private static double[,] InverseHessian(Objective objective, double[] point, double[] gradient)
    {
        var n = point.Length;
        var hessian = new double[n, n];
        var shifted = new double[n];
        var there = (double[])point.Clone();
        for (var j = 0; j < n; j++)
        {
            var step = 1e-4 * Math.Max(Math.Abs(point[j]), 0.1);
            there[j] = point[j] + step;
            objective(there, shifted);
            there[j] = point[j];
            for (var k = 0; k < n; k++)
            {
                var slope = (shifted[k] - gradient[k]) / step / 2;
                hessian[j, k] += slope;
                hessian[k, j] += slope;
            }
        }

        var eigen = SymmetricEigen.Of(hessian);
        var floor = 1e-6 * Math.Max(eigen.Values.Max(Math.Abs), 1e-300);
        return eigen.Apply(value => 1 / Math.Max(Math.Abs(value), floor));
    }

    private static void Update(double[,] inverse, double[] point, double[] trial, double[] gradient, double[] trialGradient)
    {
        var n = point.Length;
        var step = new double[n];
        var change = new double[n];
        double curvature = 0, stepLength = 0, changeLength = 0;
        for (var j = 0; j < n; j++)
        {
            step[j] = trial[j] - point[j];
            change[j] = trialGradient[j] - gradient[j];
            curvature += step[j] * change[j];
            stepLength += step[j] * step[j];
            changeLength += change[j] * change[j];
        }

        if (curvature <= 1e-12 * Math.Sqrt(stepLength * changeLength)) return;
        var mapped = Product(inverse, change);
        var weight = 0.0;
        for (var j = 0; j < n; j++) weight += change[j] * mapped[j];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
                inverse[i, j] += (1 + weight / curvature) * step[i] * step[j] / curvature - (mapped[i] * step[j] + step[i] * mapped[j]) / curvature;
        }
    }

    private static double[] Product(double[,] matrix, double[] vector)
    {
        var n = vector.Length;
        var result = new double[n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++) result[i] += matrix[i, j] * vector[j];
        }

        return result;
    }
}
