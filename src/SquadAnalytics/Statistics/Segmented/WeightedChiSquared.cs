namespace SquadAnalytics.Statistics;

/// <summary>Tail of a sum of independent χ²₁ variables with weights of 0 or more.</summary>
/// <remarks>
/// P(Q &gt; x) = 1/2 + 1/π ∫ sin θ(u)/(u ρ(u)) du, θ = Σ atan(w u)/2 - xu/2, ρ = Π(1 + w²u²)^¼, by Simpson's rule to an absolute error below 1e-6.
/// Source: Imhof (1961), Biometrika 48:419-426 (from memory).
/// </remarks>
internal static class WeightedChiSquared
{
    public static double UpperTail(double[] weights, double x)
    {
        var largest = weights.Max();
        if (largest == 0) return x >= 0 ? 0 : 1;
        double[] relevant = [.. weights.Where(weight => weight > 1e-9 * largest)];
        double Integrand(double u)
        {
            if (u == 0) return (relevant.Sum() - x) / 2;
            double angle = -x * u / 2, logRadius = 0;
            foreach (var weight in relevant)
            {
                angle += Math.Atan(weight * u) / 2;
                logRadius += Math.Log(1 + weight * u * (weight * u)) / 4;
            }

            return Math.Sin(angle) / u * Math.Exp(-logRadius);
        }

        var step = 0.05 / Math.Max(x / 2, largest);
        var sum = 0.0;
        for (var u = 0.0; u < 1e7 * step; u += 2 * step)
        {
            sum += step / 3 * (Integrand(u) + 4 * Integrand(u + step) + Integrand(u + 2 * step));
            var logRadius = 0.0;
            foreach (var weight in relevant) logRadius += Math.Log(1 + weight * u * (weight * u)) / 4;

            // What is left oscillates under an envelope that falls faster than 1/(uρ).
            if (u > 0 && Math.Exp(-logRadius) / u < 1e-8 * x) break;
        }

        return Math.Clamp(0.5 + sum / Math.PI, 0, 1);
    }
}
