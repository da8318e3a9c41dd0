using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>What a handout is about.</summary>
public sealed record HandoutOptions
{
    /// <summary>The protocol, or null for that of the latest complete test.</summary>
    public Protocol? Protocol { get; init; }

    /// <summary>The smallest worthwhile change; null takes a tenth of the width of the fastest band, where the protocol has bands.</summary>
    public SmallestWorthwhileChange? Worthwhile { get; init; }

    /// <summary>Confidence level of the interval.</summary>
    public ConfidenceLevel Level { get; init; } = ConfidenceLevel.Ninety;

    /// <summary>A line that says that the data are invented; null for a club's own.</summary>
    public string? DataNote { get; init; }
}
