namespace SquadAnalytics.Reliability;

/// <summary>What the way of timing adds to the noise of a session total. It is already inside a typical error from the same data: never add it again.</summary>
public sealed record TimingErrorResult
{
    /// <summary>SD from rounding to the step the times are written in, √(n h² / 12).</summary>
    public required Estimate Rounding { get; init; }

    /// <summary>SD from starting and stopping a watch by hand, √n times that of one set.</summary>
    public required Estimate Hand { get; init; }

    /// <summary>Both together, √(rounding² + hand²).</summary>
    public required Estimate OfTotal { get; init; }

    /// <summary>On a difference of two totals, √2 times that.</summary>
    public required Estimate OfDifference { get; init; }

    /// <summary>The SD of a total.</summary>
    public override string ToString() => $"Timing alone: total {OfTotal}, difference of totals {OfDifference}";
}
