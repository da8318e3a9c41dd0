using System.Globalization;
using System.Text;

namespace SquadAnalytics.Statistics;

/// <summary>A fitted linear mixed model.</summary>
public sealed record MixedFit
{
    private readonly FixedEffectInference _inference;

    internal MixedFit(FixedEffectInference inference) => _inference = inference;

    /// <summary>The model that was fitted; simpler than the one asked for where a singular fit was simplified, see <see cref="Notes"/>.</summary>
    public required MixedDesign Design { get; init; }

    /// <summary>What was maximised.</summary>
    public required MixedCriterion Criterion { get; init; }

    /// <summary>Fixed effects in the order of the design.</summary>
    public required IReadOnlyList<FixedEffect> FixedEffects { get; init; }

    /// <summary>Covariance matrix of the fixed effects, row by row; the adjusted one with Kenward and Roger's method.</summary>
    public required IReadOnlyList<IReadOnlyList<double>> FixedCovariance { get; init; }

    /// <summary>Standard deviations between groups, term by term.</summary>
    public required IReadOnlyList<VarianceComponent> VarianceComponents { get; init; }

    /// <summary>Correlations of random coefficients, of terms fitted with correlations.</summary>
    public required IReadOnlyList<RandomCorrelation> Correlations { get; init; }

    /// <summary>Residual standard deviation, in the unit of the response.</summary>
    public required Estimate ResidualStandardDeviation { get; init; }

    /// <summary>Predicted deviations of every group, term by term, column by column.</summary>
    public required IReadOnlyList<RandomEffect> RandomEffects { get; init; }

    /// <summary>The relative covariance factor: lower triangles of the terms, column by column; dimensionless for intercepts.</summary>
    public required IReadOnlyList<double> Theta { get; init; }

    /// <summary>Minus twice the log-likelihood, or the restricted one.</summary>
    public required double Deviance { get; init; }

    /// <summary>How many parameters: fixed effects, variance parameters, residual variance.</summary>
    public required int Parameters { get; init; }

    /// <summary>How many observations.</summary>
    public required int Observations { get; init; }

    /// <summary>Sum of squared differences between response and fitted values, random effects included.</summary>
    public required double ResidualSumOfSquares { get; init; }

    /// <summary>Whether the fit lies on the boundary: a random coefficient with a relative standard deviation, or 1 - |correlation|, below 1e-4.</summary>
    public required bool IsSingular { get; init; }

    /// <summary>How often the deviance was evaluated.</summary>
    public required int Evaluations { get; init; }

    /// <summary>What a reader has to know: simplifications, boundaries, the method.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Level of the intervals.</summary>
    public required ConfidenceLevel ConfidenceLevel { get; init; }

    /// <summary>The log-likelihood, or the restricted one.</summary>
    public double LogLikelihood => -Deviance / 2;

    /// <summary>Akaike's criterion: deviance + 2 × parameters. Between REML fits compare only models with equal fixed effects.</summary>
    public double Aic => Deviance + 2 * Parameters;

    /// <summary>Schwarz's criterion: deviance + parameters × ln n.</summary>
    public double Bic => Deviance + Parameters * Math.Log(Observations);

    /// <summary>The fixed effect of a column.</summary>
    /// <exception cref="ArgumentException">There is no such column.</exception>
    public FixedEffect Fixed(string name) =>
        FixedEffects.FirstOrDefault(effect => string.Equals(effect.Name, name, StringComparison.Ordinal))
        ?? throw new ArgumentException($"There is no fixed effect '{name}'; there are {string.Join(", ", FixedEffects.Select(effect => effect.Name))}.", nameof(name));

    /// <summary>A linear combination of the fixed effects: Σ w_j β_j, with the standard error and df of this fit's method.</summary>
    /// <remarks>SE √(w'Cw), w the weights and C <see cref="FixedCovariance"/>. Assumptions and sources as for <see cref="MixedModel"/> and <see cref="FixedEffectDegreesOfFreedom"/>.</remarks>
    /// <param name="name">What the combination stands for, for the method line.</param>
    /// <param name="weights">One weight for each fixed effect.</param>
    /// <param name="unit">Unit of the combination.</param>
    /// <returns>The combination with its interval and the p-value of the hypothesis that it is 0.</returns>
    /// <exception cref="ArgumentException">The weights are not one for each fixed effect, or all are 0.</exception>
    public Estimate Contrast(string name, IReadOnlyList<double> weights, Unit unit = Unit.None)
    {
        var row = Row(weights);
        var value = 0.0;
        for (var j = 0; j < row.Length; j++) value += row[j] * FixedEffects[j].Estimate.Value;
        return MixedModel.FixedEstimate(value, unit, Observations, $"{name}: linear mixed model, {_inference.Name}", _inference, row, ConfidenceLevel);
    }

    /// <summary>Tests several linear combinations of the fixed effects at once.</summary>
    /// <remarks>
    /// F = (Lβ)'(LCL')⁻¹Lβ / r, L the rows, r how many are independent, C <see cref="FixedCovariance"/>; Kenward and Roger's F is scaled as well. Satterthwaite's denominator merges the degrees of freedom of the
    /// independent rows (Fai and Cornelius 1996, J Stat Comput Simul 54:363-378, from memory). Without a unit; assumes what <see cref="MixedModel"/> assumes.
    /// </remarks>
    /// <param name="contrasts">Rows of weights, one weight for each fixed effect; rows that are combinations of others are merged.</param>
    /// <exception cref="ArgumentException">No row, or a row of wrong length or of zeros.</exception>
    public JointTest Test(IReadOnlyList<IReadOnlyList<double>> contrasts)
    {
        ArgumentNullException.ThrowIfNull(contrasts);
        if (contrasts.Count == 0) throw new ArgumentException("A joint test needs at least one contrast.", nameof(contrasts));
        return _inference.Test([.. contrasts.Select(Row)], [.. FixedEffects.Select(effect => effect.Estimate.Value)]);
    }

    /// <summary>The model, its fixed effects and its standard deviations, one per line.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"{Design}, {(Criterion == MixedCriterion.Reml ? "REML" : "ML")}, {Observations} observations");
        foreach (var effect in FixedEffects) text.AppendLine(CultureInfo.InvariantCulture, $"  {effect}");
        foreach (var component in VarianceComponents) text.AppendLine(CultureInfo.InvariantCulture, $"  {component}");
        foreach (var correlation in Correlations) text.AppendLine(CultureInfo.InvariantCulture, $"  {correlation}");
        text.Append(CultureInfo.InvariantCulture, $"  Residual SD: {ResidualStandardDeviation}");
        foreach (var note in Notes) text.AppendLine().Append(CultureInfo.InvariantCulture, $"  Note: {note}");
        return text.ToString();
    }

    private double[] Row(IReadOnlyList<double> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        if (weights.Count != FixedEffects.Count)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"A contrast needs one weight for each of the {FixedEffects.Count} fixed effects, but has {weights.Count}."), nameof(weights));
        }

        if (weights.Any(weight => !double.IsFinite(weight)) || weights.All(weight => weight == 0))
            throw new ArgumentException("The weights of a contrast must be finite and not all 0.", nameof(weights));
        return [.. weights];
    }
}
