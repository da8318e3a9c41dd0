using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>How the squad paced the test on one day.</summary>
public static class SquadProfile
{
    private const int FewestAthletes = 3;

    /// <summary>The median work time of each set over all athletes who completed the test on a day.</summary>
    /// <remarks>
    /// In seconds. Sessions of the same protocol key, not void and complete; of an athlete who did the test twice, the first occasion. Descriptive: no interval.
    /// Source: common practice, no source.
    /// Assumes nothing: it describes the squad.
    /// </remarks>
    /// <param name="squad">The squad.</param>
    /// <param name="protocol">The protocol.</param>
    /// <param name="date">The test day.</param>
    /// <returns>The medians, or <see cref="Refusal.TooFewAthletes"/> with fewer than three athletes.</returns>
    public static Answer<SquadProfileResult> Summarize(Squad squad, Protocol protocol, DateOnly date)
    {
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(protocol);
        var sessions = squad.Sessions
            .Where(session => session.Date == date && !session.IsVoid && session.IsComplete && session.Protocol.Key == protocol.Key)
            .DistinctBy(session => session.AthleteId)
            .ToList();
        if (sessions.Count < FewestAthletes) return new NotEstimable("the squad's usual pacing", Refusal.TooFewAthletes, FewestAthletes, sessions.Count, "athletes");
        return new SquadProfileResult
        {
            Date = date,
            Medians = [.. Enumerable.Range(0, protocol.Sets).Select(k => new Seconds(Descriptive.Median([.. sessions.Select(session => session.TimesSeconds[k])])))],
            Athletes = sessions.Count,
        };
    }
}
