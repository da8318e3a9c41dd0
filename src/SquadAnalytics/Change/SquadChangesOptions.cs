namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="SquadChanges"/>.</summary>
public sealed record SquadChangesOptions
{
    private readonly Percent _falseShare = new(10);

    /// <summary>Any day of the week whose tests are looked at; null for the week of the squad's latest eligible test.</summary>
    public DateOnly? Week { get; init; }

    /// <summary>The last day from which tests may serve as baseline; null for every test before the week. With one baseline test and a date this compares two named tests.</summary>
    public DateOnly? BaselineUntil { get; init; }

    /// <summary>Which hypothesis the p-values test.</summary>
    public FlaggedChange Flag { get; init; }

    /// <summary>The share q of false ones to expect at most among those flagged; above 0 and below 100 %. Default 10 %.</summary>
    public Percent FalseShare
    {
        get => _falseShare;
        init => _falseShare = value.Value is > 0 and < 100 ? value : throw new ArgumentOutOfRangeException(nameof(FalseShare), value.Value, "FalseShare must be above 0 and below 100 %.");
    }

    /// <summary>Scale, level, number of baseline tests and selection of each athlete's change.</summary>
    public AthleteChangeOptions Change { get; init; } = new();
}
