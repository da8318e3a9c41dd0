namespace SquadAnalytics.Statistics;

/// <summary>Roots of continuous functions of one variable.</summary>
internal static class BracketedRoot
{
    private const double Epsilon = 2.220446049250313e-16;

    /// <summary>A root between two points where the function has opposite signs, to machine precision or <paramref name="tolerance"/>.</summary>
    /// <remarks>Brent (1973), Algorithms for minimization without derivatives (from memory): inverse quadratic steps, safeguarded by bisection.</remarks>
    /// <exception cref="ArgumentException">The function has the same sign at both points.</exception>
    public static double Find(Func<double, double> function, double lower, double upper, double tolerance = 0)
    {
        double a = lower, b = upper, fa = function(a), fb = function(b);
        if (fa == 0) return a;
        if (fb == 0) return b;
        if (!(fa < 0 && fb > 0) && !(fa > 0 && fb < 0))
            throw new ArgumentException(FormattableString.Invariant($"The function must change sign between {lower} and {upper}, but was {fa} and {fb}."), nameof(upper));
        double c = a, fc = fa, step = b - a, previous = step;
        while (true)
        {
            if (Math.Sign(fb) == Math.Sign(fc))
            {
                c = a;
                fc = fa;
                step = previous = b - a;
            }

            if (Math.Abs(fc) < Math.Abs(fb)) (a, b, c, fa, fb, fc) = (b, c, b, fb, fc, fb);
            var nearest = 2 * Epsilon * Math.Abs(b) + tolerance / 2;
            var half = (c - b) / 2;
            if (Math.Abs(half) <= nearest || fb == 0) return b;
            if (Math.Abs(previous) >= nearest && Math.Abs(fa) > Math.Abs(fb))
            {
                var (p, q) = Interpolate(a, b, c, fa, fb, fc, half);
                var accept = 2 * p < Math.Min(3 * half * q - Math.Abs(nearest * q), Math.Abs(previous * q));
                previous = accept ? step : half;
                step = accept ? p / q : half;
            }
            else
            {
                step = previous = half;
            }

            a = b;
            fa = fb;
            b += Math.Abs(step) > nearest ? step : Math.CopySign(nearest, half);
            fb = function(b);
        }
    }

    /// <summary>The root of a function that never falls, searched outwards from a start in steps that double.</summary>
    /// <exception cref="ArithmeticException">No change of sign was found.</exception>
    public static double FindRising(Func<double, double> function, double start, double step, double tolerance = 0)
    {
        double here = start, value = function(here);
        var direction = value < 0 ? 1 : -1;
        for (var doubling = 0; doubling < 200 && value != 0; doubling++)
        {
            var next = here + direction * step;
            var nextValue = function(next);
            if (nextValue == 0) return next;
            if (Math.Sign(nextValue) != Math.Sign(value)) return Find(function, Math.Min(here, next), Math.Max(here, next), tolerance);
            (here, value, step) = (next, nextValue, 2 * step);
        }

        return value == 0 ? here : throw new ArithmeticException(FormattableString.Invariant($"No root found searching outwards from {start}."));
    }

    private static (double P, double Q) Interpolate(double a, double b, double c, double fa, double fb, double fc, double half)
    {
        double p, q;
        var s = fb / fa;
        if (a == c)
        {
            p = 2 * half * s;
            q = 1 - s;
        }
        else
        {
            var r = fb / fc;
            q = fa / fc;
            p = s * (2 * half * q * (q - r) - (b - a) * (r - 1));
            q = (q - 1) * (r - 1) * (s - 1);
        }

        return p > 0 ? (p, -q) : (-p, q);
    }
}
