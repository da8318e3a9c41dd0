using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Criteria that rank least-squares models of the same observations.</summary>
/// <remarks>
/// Only differences between models of the same observations mean anything; below 2 they say nothing. They rank the models listed and test none.
/// Assumes independent normal errors of equal variance; without a unit.
/// Sources: Akaike (1974), IEEE Trans Autom Control 19:716-723; Hurvich and Tsai (1989), Biometrika 76:297-307; Schwarz (1978), Ann Stat
/// 6:461-464; Burnham and Anderson (2002), Model Selection and Multimodel Inference (all from memory).
/// </remarks>
public static class InformationCriteria
{
    /// <summary>Akaike's criterion corrected for few observations: n ln(RSS/n) + 2p + 2p(p+1)/(n-p-1).</summary>
    /// <param name="observations">n, 1 or more.</param>
    /// <param name="residualSumOfSquares">RSS, not negative.</param>
    /// <param name="parameters">p, the residual variance and any searched break included; 1 or more.</param>
    /// <returns>The criterion, or null where n - p - 1 is not above 0 or the fit is perfect.</returns>
    public static double? Aicc(int observations, double residualSumOfSquares, int parameters)
    {
        var rest = Require.AtLeast(1, observations) - Require.AtLeast(1, parameters) - 1;
        return rest > 0 && Require.Finite(residualSumOfSquares) > 0
            ? observations * Math.Log(residualSumOfSquares / observations) + 2.0 * parameters + 2.0 * parameters * (parameters + 1) / rest
            : null;
    }

    /// <summary>Schwarz's criterion: n ln(RSS/n) + p ln n.</summary>
    /// <param name="observations">n, 1 or more.</param>
    /// <param name="residualSumOfSquares">RSS, not negative.</param>
    /// <param name="parameters">p, the residual variance and any searched break included; 1 or more.</param>
    /// <returns>The criterion, or null where the fit is perfect.</returns>
    public static double? Bic(int observations, double residualSumOfSquares, int parameters) =>
        Require.Finite(residualSumOfSquares) > 0
            ? Require.AtLeast(1, observations) * Math.Log(residualSumOfSquares / observations) + Require.AtLeast(1, parameters) * Math.Log(observations)
            : null;

    /// <summary>Normal log-likelihood at its maximum: -n/2 (ln(2π RSS/n) + 1); null where the fit is perfect.</summary>
    /// <param name="observations">n, 1 or more.</param>
    /// <param name="residualSumOfSquares">RSS, not negative.</param>
    public static double? LogLikelihood(int observations, double residualSumOfSquares) =>
        Require.Finite(residualSumOfSquares) > 0
            ? -Require.AtLeast(1, observations) / 2.0 * (Math.Log(Math.Tau * residualSumOfSquares / observations) + 1)
            : null;

    /// <summary>Akaike weights exp(-Δ/2)/Σ exp(-Δ/2), Δ the difference to the smallest criterion.</summary>
    /// <param name="criteria">One criterion for each model; null for a model that is not ranked.</param>
    /// <returns>One weight for each model, null where the criterion is null.</returns>
    public static IReadOnlyList<double?> Weights(IReadOnlyList<double?> criteria)
    {
        ArgumentNullException.ThrowIfNull(criteria);
        if (criteria.All(criterion => criterion is null)) return [.. criteria];
        var best = criteria.Min();
        var total = criteria.Sum(criterion => Math.Exp(-(criterion - best) / 2 ?? double.NegativeInfinity));
        return [.. criteria.Select(criterion => Math.Exp(-(criterion - best) / 2 ?? double.NegativeInfinity) / total is var weight && criterion is not null ? weight : (double?)null)];
    }
}
