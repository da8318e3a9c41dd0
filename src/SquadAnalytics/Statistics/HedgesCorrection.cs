using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Hedges's factor J that takes the small-sample bias out of a standardised difference: g = J d. Without a unit.</summary>
/// <remarks>Assumes normal data. Hedges (1981), J Educ Stat 6:107-128 (from memory; checked against R arithmetic).</remarks>
public static class HedgesCorrection
{
    /// <summary>J(m) = Γ(m/2) / (√(m/2) Γ((m - 1)/2)) for m degrees of freedom, above 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 1.</exception>
    public static double Exact(double degreesOfFreedom)
    {
        if (!(Require.Finite(degreesOfFreedom) > 1)) throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Hedges's factor needs more than 1 degree of freedom.");
        var half = degreesOfFreedom / 2;
        return Math.Exp(GammaFunction.Log(half) - GammaFunction.Log(half - 0.5) - Math.Log(half) / 2);
    }

    /// <summary>The usual approximation 1 - 3/(4 m - 1).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 1.</exception>
    public static double Approximate(double degreesOfFreedom) => Require.Finite(degreesOfFreedom) > 1
        ? 1 - 3 / (4 * degreesOfFreedom - 1)
        : throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "Hedges's factor needs more than 1 degree of freedom.");
}
