namespace SquadAnalytics.Import;

/// <summary>What is known about the sources beforehand. What is left null and not written in a source is asked, never guessed.</summary>
public sealed record ImportOptions
{
    /// <summary>The order of day, month and year where dates are written as three numbers.</summary>
    public DateOrder? DateOrder { get; init; }

    /// <summary>The date of rows that state none.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Id or name of the protocol of rows that state none.</summary>
    public string? Protocol { get; init; }

    /// <summary>The decimal mark; null asks where a comma is met.</summary>
    public DecimalMark? DecimalMark { get; init; }

    /// <summary>Whether set times are work times or the running clock; null asks where they rise like a clock.</summary>
    public TimeMeaning? Times { get; init; }

    /// <summary>The squad whose athletes, protocols and sessions are matched; null takes names and the number of sets as they stand.</summary>
    public Squad? Squad { get; init; }

    /// <summary>Whether names that resemble nobody in the squad are new athletes without asking.</summary>
    public bool AcceptNewAthletes { get; init; }

    /// <summary>Answers that a person gave to the decisions of an earlier reading of the same sources.</summary>
    public IReadOnlyList<DecisionAnswer> Answers { get; init; } = [];
}
