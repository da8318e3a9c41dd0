namespace SquadAnalytics.Change;

/// <summary>One athlete's change with regression to the mean taken out.</summary>
/// <param name="AthleteId">The athlete.</param>
/// <param name="Observed">The change as observed, later minus earlier.</param>
/// <param name="Expected">The change to expect without any true change, because the baseline lay off the squad's mean.</param>
/// <param name="Adjusted">The change beyond the squad's mean change and that expectation.</param>
public sealed record RegressionToTheMeanRow(string AthleteId, Estimate Observed, Estimate Expected, Estimate Adjusted)
{
    /// <summary>Observed, expected and adjusted change.</summary>
    public override string ToString() => $"{AthleteId}: observed {Observed}, expected without change {Expected}, beyond squad and expectation {Adjusted}";
}
