namespace SquadAnalytics.Import;

/// <summary>What was written in the cell of a set or station.</summary>
public enum EntryKind
{
    /// <summary>Nothing, or a dash: not recorded.</summary>
    NotRecorded,

    /// <summary>A time.</summary>
    Timed,

    /// <summary><c>DNF</c>: started and not finished.</summary>
    NotFinished,

    /// <summary><c>DNS</c>: not started.</summary>
    NotStarted,

    /// <summary>Something that is none of these.</summary>
    Unreadable,
}
