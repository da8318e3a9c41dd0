namespace SquadAnalytics.Load;

/// <summary>Training load of one day from the rating of perceived exertion.</summary>
public static class SessionLoad
{
    /// <summary>Load of a day, in arbitrary units: session rating of perceived exertion (0 to 10, category-ratio) times minutes.</summary>
    /// <remarks>
    /// Both have to be written down, otherwise the load is unknown (null), not 0. A day counts 0 only where it is confirmed as one of rest.
    /// Source: Foster (1998), Med Sci Sports Exerc 30:1164-1168; Foster et al. (2001), J Strength Cond Res 15:109-115.
    /// Assumes that effort and duration trade off one for one.
    /// </remarks>
    /// <returns>Arbitrary units, or null where the load is not known.</returns>
    public static double? Of(DayContext day)
    {
        ArgumentNullException.ThrowIfNull(day);
        if (day.SessionRpe is { } rating && day.Minutes is { } minutes) return rating * minutes;
        return day.IsRestDay ? 0 : null;
    }
}
