namespace SquadAnalytics.Storage;

/// <summary>Why an imported row is not among the sessions.</summary>
public enum HeldRowState
{
    /// <summary>A person has to decide what it means.</summary>
    AwaitingDecision,

    /// <summary>It cannot be read as it stands; it stays until it is corrected or dismissed by a person.</summary>
    Refused,
}
