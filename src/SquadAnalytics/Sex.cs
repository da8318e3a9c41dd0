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

/// <summary>Words of <see cref="Sex"/>.</summary>
public static class SexWords
{
    /// <summary>The entry in words.</summary>
    public static string Words(this Sex sex) => sex switch
    {
        Sex.Unknown => "not entered",
        Sex.Female => "female",
        Sex.Male => "male",
        _ => throw new ArgumentOutOfRangeException(nameof(sex), sex, "Not an entry of this library."),
    };
}
