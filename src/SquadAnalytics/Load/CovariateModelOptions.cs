using SquadAnalytics.Statistics;

namespace SquadAnalytics.Load;

/// <summary>Options of <see cref="CovariateModel"/>.</summary>
public sealed record CovariateModelOptions
{
    private readonly IReadOnlyList<Circumstance> _covariates = [Circumstance.Sleep, Circumstance.Sparring];

    /// <summary>The circumstances in the model, each once; sleep and sparring by default. Tests for which one is not written down are left out.</summary>
    public IReadOnlyList<Circumstance> Covariates
    {
        get => _covariates;
        init => _covariates = value is { Count: > 0 } && value.Distinct().Count() == value.Count ? value : throw new ArgumentException("There must be one circumstance or more, each once.", nameof(Covariates));
    }

    /// <summary>Whether a straight trend of the squad on weeks is in the model; on by default, because circumstances drift over a season, too.</summary>
    public bool WithTrend { get; init; } = true;

    /// <summary>Degrees of freedom; Satterthwaite's by default.</summary>
    public FixedEffectDegreesOfFreedom DegreesOfFreedom { get; init; } = FixedEffectDegreesOfFreedom.Satterthwaite;

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}
