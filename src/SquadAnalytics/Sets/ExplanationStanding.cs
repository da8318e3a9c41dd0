namespace SquadAnalytics.Sets;

/// <summary>Where a candidate explanation stands.</summary>
public enum ExplanationStanding
{
    /// <summary>The data fit badly without it, multiplicity charged.</summary>
    Supported,

    /// <summary>Even the upper limit of what it adds is less than what matters, or the data exclude it.</summary>
    NotSupported,

    /// <summary>The data allow both.</summary>
    CannotTell,
}

/// <summary>Words of standings.</summary>
public static class ExplanationStandings
{
    /// <summary>The standing in words.</summary>
    public static string Words(this ExplanationStanding standing) => standing switch
    {
        ExplanationStanding.Supported => "supported",
        ExplanationStanding.NotSupported => "not supported",
        ExplanationStanding.CannotTell => "cannot tell",
        _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, "Not a standing of this library."),
    };
}
