namespace SquadAnalytics.Standing;

/// <summary>How an athlete stands to the test of one week.</summary>
public enum Presence
{
    /// <summary>Did the whole test.</summary>
    Tested,

    /// <summary>Began and did not finish, or not every set was timed.</summary>
    Incomplete,

    /// <summary>The test is kept, but void.</summary>
    Void,

    /// <summary>Was entered and did not start.</summary>
    NotStarted,

    /// <summary>Was due and has no entry.</summary>
    Absent,

    /// <summary>Not due: a knock to the head that no licensed clinician has cleared by then.</summary>
    Barred,
}

/// <summary>Words of <see cref="Presence"/>.</summary>
public static class PresenceWords
{
    /// <summary>The presence in words.</summary>
    public static string Words(this Presence presence) => presence switch
    {
        Presence.Tested => "tested",
        Presence.Incomplete => "did not complete the test",
        Presence.Void => "test void",
        Presence.NotStarted => "did not start",
        Presence.Absent => "absent",
        Presence.Barred => "not due: head knock without clearance",
        _ => throw new ArgumentOutOfRangeException(nameof(presence), presence, "Not a presence of this library."),
    };
}
