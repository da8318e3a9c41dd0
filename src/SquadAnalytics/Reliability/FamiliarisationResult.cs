using System.Globalization;

namespace SquadAnalytics.Reliability;

/// <summary>How many first tests still show practice.</summary>
public sealed record FamiliarisationResult
{
    /// <summary>How many first tests to drop, f: 1 to 3.</summary>
    public required int Drop { get; init; }

    /// <summary>Whether the rule was met; otherwise f is its largest value, 3, or as many as there are tests to judge.</summary>
    public required bool Settled { get; init; }

    /// <summary>Mean change from the first to the second, the second to the third own test, and so on, over athletes who took both; negative = faster.</summary>
    public required IReadOnlyList<Answer<Estimate>> Changes { get; init; }

    /// <summary>Mean of the later tests minus mean of the dropped ones, per athlete; negative = faster later.</summary>
    public required Answer<Estimate> LaterMinusDropped { get; init; }

    /// <summary>What the rule found and what it cannot tell.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The number of tests to drop, and the changes.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"Drop the first {Drop}{(Settled ? "" : " (not settled)")}; changes between own tests: {string.Join("; ", Changes)}");
}
