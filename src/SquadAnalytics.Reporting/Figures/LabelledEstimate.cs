namespace SquadAnalytics.Reporting.Figures;

/// <summary>A name and its estimate with interval, or the refusal that stands in its place.</summary>
/// <param name="Label">What or whom it belongs to, as printed.</param>
/// <param name="Estimate">The estimate, or why there is none.</param>
public sealed record LabelledEstimate(string Label, Answer<Estimate> Estimate)
{
    /// <summary>What is said beside it, such as the verdict from its interval; null for nothing.</summary>
    public string? Remark { get; init; }

    /// <summary>Whether the mark is filled, to set off rows that the remark singles out.</summary>
    public bool IsSingledOut { get; init; } = true;
}
