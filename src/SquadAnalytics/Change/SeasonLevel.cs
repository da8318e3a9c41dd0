using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Where does an athlete stand, when the level itself may drift? The line of <see cref="SeasonLine"/> with an interval, its weight estimated.</summary>
public static class SeasonLevel
{
    private const int NeededWeeks = 12;
    private const string Measure = "the season's level";

    /// <summary>Fits a level that drifts from week to week and is seen with noise.</summary>
    /// <remarks>
    /// y_t = μ_t + ε_t, μ_(t+1) = μ_t + η_t, both normal, on a grid of weeks; both variances by maximum likelihood, levels by the Kalman filter and smoother; a week without a test adds drift and no
    /// observation. Once settled a new test has the weight λ = (-q + √(q² + 4 q)) / 2, q = σ_η² / σ_ε². The level has no trend of its own: where there is one, it lags behind. Intervals
    /// count that neither variance is known: every split of the variance into drift and noise is weighted by how well it fits (flat prior on the split and on the log of the scale); with both taken for
    /// known, 90 % intervals would hold 75 of 100 levels in a season. Sources: Harvey 1989, Forecasting, structural time series models and the Kalman filter; Durbin and Koopman 2012, Time series analysis by state space methods (from memory).
    /// Assumes normal noise and a level that moves by independent normal steps.
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="options">Level and selection; null for the defaults.</param>
    /// <returns>The level, or <see cref="Refusal.TooFewSessions"/> below 12 weeks with an eligible test, <see cref="Refusal.BoundarySolution"/> where the drift or the noise is estimated at 0,
    /// <see cref="Refusal.ZeroVariance"/>, <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes.</exception>
    public static Answer<SeasonLevelResult> Fit(IReadOnlyList<Session> sessions, SeasonLevelOptions? options = null)
    {
        options ??= new SeasonLevelOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match(selection => Of(selection, options), refusal => refusal);
    }

    private static Answer<SeasonLevelResult> Of(SessionSelection selection, SeasonLevelOptions options)
    {
        var totals = selection.Sessions.GroupBy(session => TestSeries.MondayOf(session.Date)).ToDictionary(week => week.Key, week => Descriptive.Mean([.. week.Select(session => session.Total.GetOrThrow().Value)]));
        if (totals.Count < NeededWeeks) return new NotEstimable(Measure, Refusal.TooFewSessions, NeededWeeks, totals.Count, "weeks with an eligible test");
        var first = totals.Keys.Min();
        DateOnly[] mondays = [.. Enumerable.Range(0, (totals.Keys.Max().DayNumber - first.DayNumber) / 7 + 1).Select(week => first.AddDays(7 * week))];
        double?[] values = [.. mondays.Select(monday => totals.TryGetValue(monday, out var total) ? total : (double?)null)];
        return LocalLevel.Fit(values).Match(
            fit => fit switch
            {
                { LevelVariance: 0 } => new NotEstimable(Measure, Refusal.BoundarySolution, "a level that drifts by more than the noise explains", "a drift of 0: a constant level with noise fits best"),
                { ObservationVariance: 0 } => new NotEstimable(Measure, Refusal.BoundarySolution, "tests with noise about the level", "a noise of 0: the level follows every test"),
                _ => Result(fit, mondays, values, totals.Count, selection, options.Level),
            },
            refusal => new Answer<SeasonLevelResult>(refusal));
    }

    private static Answer<SeasonLevelResult> Result(LocalLevel fit, DateOnly[] mondays, double?[] values, int observed, SessionSelection selection, ConfidenceLevel level)
    {
        var belief = new LevelBelief(values);
        Estimate Level(double value, double error, int week, bool inHindsight, int seen, string method) =>
            new(value, Unit.Seconds, seen, method) { StandardError = error, Interval = belief.Limits(week, inHindsight, level) };
        var missing = values.Length - observed;
        var tests = 0;
        return new SeasonLevelResult
        {
            AthleteId = selection.Sessions[0].AthleteId,
            Points = [.. mondays.Select((monday, week) => new SeasonLevelPoint(
                monday,
                values[week],
                Level(fit.Points[week].Filtered, fit.Points[week].FilteredStandardError, week, false, values[week] is null ? tests : ++tests, "local level, Kalman filter"),
                Level(fit.Points[week].Smoothed, fit.Points[week].SmoothedStandardError, week, true, observed, "local level, Kalman smoother")))],
            Noise = new Estimate(Math.Sqrt(fit.ObservationVariance), Unit.Seconds, observed, "local level, maximum likelihood"),
            WeeklyDrift = new Estimate(Math.Sqrt(fit.LevelVariance), Unit.Seconds, observed, "local level, maximum likelihood"),
            SteadyWeight = fit.SteadyGain,
            Selection = selection,
            Notes =
            [
                .. missing > 0 ? [FormattableString.Invariant($"{missing} weeks without a test: the level is carried on, its interval widens.")] : Array.Empty<string>(),
                "The level has no trend of its own: where there is one, it lags behind. Intervals count that drift and noise are not known apart.",
                .. selection.Notes,
            ],
        };
    }
}
