namespace SquadAnalytics.Standing;

/// <summary>The categories of one athlete on a test date. What is not known is null and says why; nothing is guessed.</summary>
public sealed record AthleteCategory
{
    /// <summary>The athlete's id.</summary>
    public required string AthleteId { get; init; }

    /// <summary>The test date.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Sex as entered, possibly unknown.</summary>
    public required Sex Sex { get; init; }

    /// <summary>The age group, or null.</summary>
    public required AgeGroup? AgeGroup { get; init; }

    /// <summary>The weight class, or null.</summary>
    public required WeightClass? WeightClass { get; init; }

    /// <summary>The day on which the body mass was written down, or null.</summary>
    public required DateOnly? BodyMassOn { get; init; }

    /// <summary>What is not known, and why.</summary>
    public required IReadOnlyList<string> Unknown { get; init; }

    /// <summary>Age group, sex and weight class.</summary>
    public override string ToString() => $"{AthleteId}: {AgeGroup?.Name ?? "age group unknown"}, {(Sex == Sex.Unknown ? "sex unknown" : Sex.ToString())}, {WeightClass?.Name ?? "weight class unknown"}";
}
