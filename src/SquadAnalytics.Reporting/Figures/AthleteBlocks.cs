namespace SquadAnalytics.Reporting.Figures;

/// <summary>One athlete's mean total in each of two blocks.</summary>
/// <param name="Label">The athlete as labelled in this report.</param>
/// <param name="First">Mean session total in the earlier block.</param>
/// <param name="Second">Mean session total in the later block.</param>
public sealed record AthleteBlocks(string Label, Seconds First, Seconds Second)
{
    /// <summary>Later minus earlier.</summary>
    public Seconds Difference => Second - First;
}
