using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>A smooth line through one athlete's season that knows how long the gaps are.</summary>
public static class SeasonLine
{
    /// <summary>Exponentially weighted moving average of the session totals.</summary>
    /// <remarks>
    /// z_i = λ_g y_i + (1 - λ_g) z_(i-1), z_1 = y_1, λ_g = 1 - (1 - λ)^g with g weeks since the test before: after a long gap the new test counts for more. Descriptive: no interval, and the
    /// line lags behind every change. Nothing is filled in for weeks without a test. Tests of one date are averaged. Source of the average: Roberts 1959, Technometrics 1:239-250 (from
    /// memory); of the exponent for gaps: common practice, no source.
    /// Assumes nothing: it describes, and carries no interval.
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="options">λ and selection; null for the defaults.</param>
    /// <returns>The line, or <see cref="Refusal.TooFewSessions"/> without an eligible session, or <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes.</exception>
    public static Answer<SeasonLineResult> Smooth(IReadOnlyList<Session> sessions, SeasonLineOptions? options = null)
    {
        options ??= new SeasonLineOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match<Answer<SeasonLineResult>>(
            selection => selection.Sessions.Count == 0 ? new NotEstimable("the season's line", Refusal.TooFewSessions, 1, 0, "eligible sessions") : Of(selection, options),
            refusal => refusal);
    }

    private static SeasonLineResult Of(SessionSelection selection, SeasonLineOptions options)
    {
        var total = TestSeries.Value(SessionMeasure.Total, Scale.Seconds);
        var dates = selection.Sessions.GroupBy(session => session.Date).Select(day => (Date: day.Key, Total: day.Average(total))).ToList();
        double[] gaps = [1, .. dates.Skip(1).Select((day, i) => SeasonWeeks.Between(dates[i].Date, day.Date))];
        var line = ExponentialAverage.Smooth([.. dates.Select(day => day.Total)], options.Lambda, gaps: gaps);
        return new SeasonLineResult
        {
            AthleteId = selection.Sessions[0].AthleteId,
            Points = [.. dates.Select((day, i) => new SeasonPoint(day.Date, SeasonWeeks.Between(dates[0].Date, day.Date), day.Total, line[i]))],
            Lambda = options.Lambda,
            Selection = selection,
            Notes = ["A descriptive line: it has no interval and lags behind every change.", .. selection.Notes],
        };
    }
}
