namespace SquadAnalytics.Reliability;

/// <summary>Change and noise from each test to the next.</summary>
public sealed record ConsecutivePairsResult
{
    /// <summary>The pairs in order; a pair with fewer than 3 athletes holds a refusal.</summary>
    public required IReadOnlyList<ConsecutivePair> Pairs { get; init; }

    /// <summary>Typical error pooled over the pairs, √(Σ df TE² / Σ df), without an interval: neighbouring pairs share a test.</summary>
    public required Estimate Pooled { get; init; }

    /// <summary>The sessions used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>The pairs, one per line.</summary>
    public override string ToString() => string.Join(Environment.NewLine, [.. Pairs.Select(pair => pair.ToString()), $"Pooled typical error {Pooled}"]);
}
