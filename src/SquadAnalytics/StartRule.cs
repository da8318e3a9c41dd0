namespace SquadAnalytics;

/// <summary>What happens when a set is not finished by the next start signal of the rolling clock.</summary>
public enum StartRule
{
    /// <summary>The next set starts as soon as the running one is finished; later sets may catch the clock up again.</summary>
    StartWhenFinished,

    /// <summary>The test ends at the first start signal that is missed.</summary>
    StopAtMissedStart,
}
