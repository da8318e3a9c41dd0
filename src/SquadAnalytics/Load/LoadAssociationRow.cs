namespace SquadAnalytics.Load;

/// <summary>How load of one window and session total go together.</summary>
public sealed record LoadAssociationRow
{
    /// <summary>The window.</summary>
    public required LoadWindow Window { get; init; }

    /// <summary>The correlation with its interval and p-value, or a refusal. Positive: more load, slower.</summary>
    public required Answer<Estimate> Correlation { get; init; }

    /// <summary>Seconds of session total per unit of load, or a refusal.</summary>
    public required Answer<Estimate> Slope { get; init; }

    /// <summary>The p-value adjusted for the windows tried (Benjamini and Hochberg), or null where there is none.</summary>
    public required Estimate? AdjustedPValue { get; init; }

    /// <summary>Eligible tests whose window is not known day by day; they are left out.</summary>
    public required int TestsWithoutLoad { get; init; }

    /// <summary>Athletes whose tests the correlation rests on; 1 where it is about one athlete, or was refused.</summary>
    public required int Athletes { get; init; }

    /// <summary>The window and its correlation.</summary>
    public override string ToString() => $"{Window}: r {Correlation}";
}
