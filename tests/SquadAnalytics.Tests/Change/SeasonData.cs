namespace SquadAnalytics.Tests.Change;

/// <summary>One invented athlete's season with two weeks missing.</summary>
internal static class SeasonData
{
    public static IReadOnlyList<double> Totals { get; } = [331.2, 330.4, 327.1, 328.0, 327.3, 323.6, 324.5, 322.9, 319.8, 321.2];

    public static IReadOnlyList<Session> Season { get; } = Of([0, 1, 2, 3, 5, 6, 7, 9, 10, 11], Totals);

    public static IReadOnlyList<Session> Of(IReadOnlyList<int> weeks, IReadOnlyList<double> totals, string athlete = "B1") =>
        [.. weeks.Select((week, i) => WorkedData.Total(totals[i], week, athlete))];

    /// <summary>Sessions of consecutive weeks.</summary>
    public static IReadOnlyList<Session> Weekly(params IReadOnlyList<double> totals) => Of([.. Enumerable.Range(0, totals.Count)], totals);

    /// <summary>The same sessions with totals changed by a function.</summary>
    public static IReadOnlyList<Session> Changed(IReadOnlyList<Session> sessions, Func<double, double> change) =>
        [.. sessions.Select(session => Session.FromTimes(session.Id, session.AthleteId, session.Date, session.Protocol, [.. session.TimesSeconds.Select(time => change(5 * time) / 5)]))];
}
