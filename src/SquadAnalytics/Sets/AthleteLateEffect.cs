namespace SquadAnalytics.Sets;

/// <summary>By how much one athlete's late sets are slower, pulled toward the squad.</summary>
/// <param name="AthleteId">The athlete's id.</param>
/// <param name="Sessions">Eligible sessions.</param>
/// <param name="Deviation">The athlete's late effect minus the squad's, in percent: best linear unbiased prediction, interval from its conditional standard deviation; or a refusal.</param>
/// <param name="Late">The athlete's late contrast, the squad's and the deviation together, in percent; or a refusal.</param>
public sealed record AthleteLateEffect(string AthleteId, int Sessions, Answer<Estimate> Deviation, Answer<Estimate> Late)
{
    /// <summary>The athlete's late contrast.</summary>
    public override string ToString() => $"{AthleteId}: {Late}";
}
