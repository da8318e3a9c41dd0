namespace SquadAnalytics.Change;

/// <summary>Weeks of a season by true dates.</summary>
internal static class SeasonWeeks
{
    public const double DaysPerWeek = 7;

    /// <summary>Weeks since the first of the sessions, which are in order of date.</summary>
    public static double[] Of(IReadOnlyList<Session> sessions) => [.. sessions.Select(session => Between(sessions[0].Date, session.Date))];

    public static double Between(DateOnly from, DateOnly to) => (to.DayNumber - from.DayNumber) / DaysPerWeek;
}
