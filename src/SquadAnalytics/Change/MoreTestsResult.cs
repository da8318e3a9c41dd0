namespace SquadAnalytics.Change;

/// <summary>How many more tests until a question can be told.</summary>
public sealed record MoreTestsResult
{
    /// <summary>The question in words, with the size of the difference.</summary>
    public required string Question { get; init; }

    /// <summary>The chance of telling the difference, by number of further tests.</summary>
    public required IReadOnlyList<PowerPoint> Curve { get; init; }

    /// <summary>The chance that is wanted.</summary>
    public required double Wanted { get; init; }

    /// <summary>The smallest number of further tests with that chance, or <see cref="Refusal.TooFewSessions"/> where the curve ends before.</summary>
    public required Answer<Estimate> Needed { get; init; }

    /// <summary>What the curve rests on.</summary>
    public required IReadOnlyList<string> Assumptions { get; init; }

    /// <summary>The question and the number.</summary>
    public override string ToString() => $"{Question}: {Needed}";
}
