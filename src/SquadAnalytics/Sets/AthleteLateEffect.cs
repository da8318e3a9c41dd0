namespace SquadAnalytics.Sets;

/// <summary>By how much one athlete's late sets are slower, pulled toward the squad.</summary>
/// <param name="AthleteId">The athlete's id.</param>
/// <param name="Sessions">Eligible sessions.</param>
/// <param name="Deviation">The athlete's late effect minus the squad's, in percent: best linear unbiased prediction with its conditional standard deviation, without an interval, which would be too narrow; or a refusal.</param>
/// <param name="Late">The athlete's late contrast in percent: posterior mean, standard deviation and interval, which count that the squad's mean and spread and the noise are not known; or a refusal.</param>
public sealed record AthleteLateEffect(string AthleteId, int Sessions, Answer<Estimate> Deviation, Answer<Estimate> Late)
{
    /// <summary>The athlete's late contrast.</summary>
    public override string ToString() => $"{AthleteId}: {Late}";
}
