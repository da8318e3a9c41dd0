namespace SquadAnalytics.Change;

/// <summary>How two groups differ after, at the same time before.</summary>
public sealed record GroupDifferenceResult
{
    /// <summary>The group that the other is held against.</summary>
    public required string Reference { get; init; }

    /// <summary>The other group.</summary>
    public required string Compared { get; init; }

    /// <summary>Athletes in the smaller of the two groups.</summary>
    public required int SmallerGroup { get; init; }

    /// <summary>Difference between groups at equal times before, compared minus reference, in seconds. Not an effect of what the groups did.</summary>
    public required Estimate Difference { get; init; }

    /// <summary>Slope of after on before, θ.</summary>
    public required Estimate Slope { get; init; }

    /// <summary>Difference of the mean changes (Welch), compared minus reference, in seconds: the plain second opinion.</summary>
    public required Estimate DifferenceOfChanges { get; init; }

    /// <summary>What a reader has to know.</summary>
    public IReadOnlyList<string> Notes => Difference.Notes;

    /// <summary>The difference between groups.</summary>
    public override string ToString() => $"difference between groups, {Compared} minus {Reference}: {Difference}";
}
