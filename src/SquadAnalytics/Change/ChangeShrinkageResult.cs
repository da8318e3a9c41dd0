namespace SquadAnalytics.Change;

/// <summary>The squad's changes, shrunken towards their mean.</summary>
public sealed record ChangeShrinkageResult
{
    /// <summary>Mean change of the squad, μ.</summary>
    public required Estimate Mean { get; init; }

    /// <summary>SD of true changes between athletes, ω; 0 where athletes show no sign of differing in their change.</summary>
    public required Estimate Spread { get; init; }

    /// <summary>One row per athlete with a change.</summary>
    public required IReadOnlyList<ShrunkenChange> Rows { get; init; }

    /// <summary>How to read the rows.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Mean, spread and rows.</summary>
    public override string ToString() => string.Join(Environment.NewLine, [$"Mean change {Mean}; spread of true changes {Spread}", .. Rows.Select(row => row.ToString())]);
}
