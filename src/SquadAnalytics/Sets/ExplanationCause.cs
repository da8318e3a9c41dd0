namespace SquadAnalytics.Sets;

/// <summary>A candidate explanation of a slow-down within the test.</summary>
public enum ExplanationCause
{
    /// <summary>Every set a little slower than the one before.</summary>
    SteadyDrift,

    /// <summary>An abrupt step after one set.</summary>
    LateBreak,

    /// <summary>Starts that are faster than usual, paid for later.</summary>
    FastStart,

    /// <summary>One station that slows by more than its part of the set.</summary>
    OneStation,

    /// <summary>The rolling clock: a slower set leaves less rest for the next.</summary>
    ClockFeedback,

    /// <summary>A circumstance before the test, such as the load of the week.</summary>
    Circumstance,

    /// <summary>Noise and recording: nothing that repeats.</summary>
    Noise,
}

/// <summary>Words of causes.</summary>
public static class ExplanationCauses
{
    /// <summary>The cause as a noun phrase.</summary>
    public static string Words(this ExplanationCause cause) => cause switch
    {
        ExplanationCause.SteadyDrift => "steady drift",
        ExplanationCause.LateBreak => "late break",
        ExplanationCause.FastStart => "too fast a start",
        ExplanationCause.OneStation => "one station",
        ExplanationCause.ClockFeedback => "the clock's feedback",
        ExplanationCause.Circumstance => "what came before the test",
        ExplanationCause.Noise => "noise and recording",
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "Not a cause of this library."),
    };
}
