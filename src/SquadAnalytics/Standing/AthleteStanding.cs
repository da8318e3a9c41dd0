using SquadAnalytics.Change;

namespace SquadAnalytics.Standing;

/// <summary>Where one athlete stands: recent level, band and best.</summary>
/// <param name="AthleteId">The athlete.</param>
/// <param name="IsJunior">Whether the athlete is in the juniors' group on the day; juniors are not ranked by default.</param>
/// <param name="LastTest">Date of the last eligible test.</param>
/// <param name="Level">Mean of the recent totals, in seconds, with the typical error of that mean.</param>
/// <param name="Band">The band of the latest test with its probability, or why there is none.</param>
/// <param name="Best">The best so far.</param>
public sealed record AthleteStanding(string AthleteId, bool IsJunior, DateOnly LastTest, Estimate Level, Answer<ProbableBandResult> Band, PersonalBest Best)
{
    /// <summary>Athlete, level and band.</summary>
    public override string ToString() => $"{AthleteId}: {Level}; {Band}";
}
