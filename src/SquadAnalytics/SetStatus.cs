namespace SquadAnalytics;

/// <summary>What is known of one set, or of one station in it.</summary>
public enum SetStatus
{
    /// <summary>Completed and timed.</summary>
    Timed,

    /// <summary>Completed, but no time was written.</summary>
    CompletedUntimed,

    /// <summary>Started and not finished.</summary>
    NotFinished,

    /// <summary>Not started.</summary>
    NotStarted,

    /// <summary>Stopped for a health reason.</summary>
    StoppedForHealth,

    /// <summary>Nothing was written down.</summary>
    NotRecorded,
}
