namespace SquadAnalytics.Change;

/// <summary>Who changed: one row per athlete, with the number of athletes looked at taken into account.</summary>
public sealed record SquadChangesResult
{
    /// <summary>Monday of the week whose tests were looked at.</summary>
    public required DateOnly WeekFrom { get; init; }

    /// <summary>One row per athlete in the order of their ids; an athlete without enough tests holds the refusal.</summary>
    public required IReadOnlyList<SquadChangeRow> Rows { get; init; }

    /// <summary>Mean change over athletes, one-sample t; refused below 3 athletes with a change.</summary>
    public required Answer<Estimate> MeanChange { get; init; }

    /// <summary>What a flag stands for.</summary>
    public required FlaggedChange Flag { get; init; }

    /// <summary>The share of false ones to expect at most among those flagged.</summary>
    public required Percent FalseShare { get; init; }

    /// <summary>The sessions used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>How to read the flags.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>The rows that are flagged.</summary>
    public IReadOnlyList<SquadChangeRow> Flagged => [.. Rows.Where(row => row.IsFlagged)];

    /// <summary>One line per athlete.</summary>
    public override string ToString() => string.Join(Environment.NewLine, [$"Week of {WeekFrom:yyyy-MM-dd}: mean change {MeanChange}", .. Rows.Select(row => row.ToString())]);
}
