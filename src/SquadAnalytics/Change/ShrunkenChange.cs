namespace SquadAnalytics.Change;

/// <summary>One athlete's change, drawn towards the squad's mean by as much as noise may have moved it.</summary>
/// <param name="AthleteId">The athlete.</param>
/// <param name="Observed">The change as observed.</param>
/// <param name="Posterior">The shrunken change; mean, standard deviation and interval count that the squad's mean and spread are not known.</param>
/// <param name="PlugIn">The same with the squad's mean and spread taken for known, without an interval: it would be too narrow.</param>
/// <param name="FasterThanWorthwhile">Posterior probability of being faster by more than S.</param>
public sealed record ShrunkenChange(string AthleteId, Estimate Observed, Estimate Posterior, Estimate PlugIn, Estimate FasterThanWorthwhile)
{
    /// <summary>Both changes.</summary>
    public override string ToString() => $"{AthleteId}: observed {Observed.Value:0.00}, shrunken {Posterior}";
}
