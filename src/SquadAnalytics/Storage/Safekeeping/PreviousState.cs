namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>What a transaction does with the kept state before the last accept.</summary>
internal enum PreviousState
{
    /// <summary>The state before this transaction takes its place.</summary>
    Replaced,

    /// <summary>It stays: the transaction is not one to undo.</summary>
    Left,

    /// <summary>It is deleted: the transaction must leave nothing to go back to.</summary>
    Dropped,
}
