namespace SquadAnalytics.Statistics;

/// <summary>How the sign-flip test is carried out.</summary>
public sealed record SignFlipOptions
{
    /// <summary>Up to this many differences all 2ⁿ sign patterns are counted; at most 24.</summary>
    public int ExactUpTo { get; init; } = 15;

    /// <summary>Random patterns beyond that.</summary>
    public int RandomFlips { get; init; } = 9_999;

    /// <summary>Seed of the random patterns.</summary>
    public int Seed { get; init; } = 1;
}
