using SquadAnalytics.Statistics;

namespace SquadAnalytics.Load;

/// <summary>Session totals on what came before the test.</summary>
public sealed record CovariateModelResult
{
    /// <summary>One row per circumstance, in the order in which they were named.</summary>
    public required IReadOnlyList<CovariateEffect> Effects { get; init; }

    /// <summary>Trend of the squad at equal circumstances, in seconds per week, or null where it was left out.</summary>
    public required Estimate? Trend { get; init; }

    /// <summary>Athletes in the model.</summary>
    public required int Athletes { get; init; }

    /// <summary>Tests in the model: those for which every circumstance is written down, of athletes with two or more of them.</summary>
    public required int Tests { get; init; }

    /// <summary>The model as it was fitted.</summary>
    public required MixedFit Model { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>How to read it.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The effect of a circumstance.</summary>
    /// <exception cref="ArgumentException">It is not in the model.</exception>
    public CovariateEffect this[Circumstance circumstance] =>
        Effects.FirstOrDefault(effect => effect.Circumstance == circumstance) ?? throw new ArgumentException($"The model has no {circumstance.Words()}.", nameof(circumstance));

    /// <summary>The effects.</summary>
    public override string ToString() => string.Join("; ", Effects);
}
