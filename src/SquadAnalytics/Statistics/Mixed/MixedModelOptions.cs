namespace SquadAnalytics.Statistics;

/// <summary>Settings of <see cref="MixedModel.Fit"/>; every default is visible here and echoed in the result.</summary>
public sealed record MixedModelOptions
{
    /// <summary>What is maximised; REML by default.</summary>
    public MixedCriterion Criterion { get; init; } = MixedCriterion.Reml;

    /// <summary>Degrees of freedom of the fixed effects; Satterthwaite's by default.</summary>
    public FixedEffectDegreesOfFreedom DegreesOfFreedom { get; init; } = FixedEffectDegreesOfFreedom.Satterthwaite;

    /// <summary>What to do with a singular fit; simplify by default.</summary>
    public SingularFits SingularFits { get; init; } = SingularFits.Simplify;

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel ConfidenceLevel { get; init; }
}
