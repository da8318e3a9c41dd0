namespace SquadAnalytics.Statistics;

/// <summary>One effect pulled toward the mean by the share of its variance that is error (best linear unbiased prediction).</summary>
/// <param name="Label">Whose or what effect it is.</param>
/// <param name="Weight">How much of the measured effect is kept: τ²/(τ² + v); the rest is the mean.</param>
/// <param name="Prediction">The predicted true effect with its interval.</param>
public sealed record ShrunkenEffect(string Label, double Weight, Estimate Prediction)
{
    /// <summary>Label and prediction.</summary>
    public override string ToString() => $"{Label}: {Prediction}";
}
