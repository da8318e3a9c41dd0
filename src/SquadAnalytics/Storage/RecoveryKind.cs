namespace SquadAnalytics.Storage;

/// <summary>What opening a logbook did with a change that had been cut short.</summary>
public enum RecoveryKind
{
    /// <summary>The change had been accepted, and was finished.</summary>
    Finished,

    /// <summary>The change had not been accepted yet, and was taken back.</summary>
    RolledBack,
}
