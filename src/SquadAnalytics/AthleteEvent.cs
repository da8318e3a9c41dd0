namespace SquadAnalytics;

/// <summary>What kind of dated event it was.</summary>
public enum EventKind
{
    /// <summary>A bout.</summary>
    Bout,

    /// <summary>A weigh-in.</summary>
    WeighIn,

    /// <summary>A knock to the head: no conditioning test until a licensed clinician has cleared the athlete.</summary>
    HeadKnock,
}

/// <summary>A dated event of one athlete.</summary>
/// <param name="Id">Its id, unique in the logbook.</param>
/// <param name="AthleteId">The athlete's id.</param>
/// <param name="Date">The day.</param>
/// <param name="Kind">What happened.</param>
public sealed record AthleteEvent(string Id, string AthleteId, DateOnly Date, EventKind Kind)
{
    /// <summary>For a head knock: the day on which a licensed clinician cleared the athlete, or null while not cleared.</summary>
    public DateOnly? ClearedOn { get; init; }

    /// <summary>Whether a head knock bars the athlete from testing on a date.</summary>
    public bool BarsTestingOn(DateOnly date) => Kind == EventKind.HeadKnock && date >= Date && (ClearedOn is null || date < ClearedOn);
}
