namespace SquadAnalytics;

/// <summary>Sex as entered for category tables; never guessed.</summary>
public enum Sex
{
    /// <summary>Not entered.</summary>
    Unknown,

    /// <summary>Female.</summary>
    Female,

    /// <summary>Male.</summary>
    Male,
}
