using SquadAnalytics.Sets;

namespace SquadAnalytics.Reliability;

/// <summary>Options of <see cref="Familiarisation"/>.</summary>
public sealed record FamiliarisationOptions
{
    /// <summary>The measure; the session total by default.</summary>
    public SessionMeasure Measure { get; init; }

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use; familiarisation is what is asked for, so nothing is dropped by default.</summary>
    public SelectionOptions Selection { get; init; } = SelectionOptions.KeepAll;
}
