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
    /// <para>y_t = μ_t + ε_t, μ_(t+1) = μ_t + η_t, both normal, on a grid of weeks; a week without a test adds drift and no observation. Noise and drift are those of maximum likelihood; once settled a
    /// new test has the weight λ = (-q + √(q² + 4 q)) / 2, q = σ_η² / σ_ε². Levels are not those of the best fit alone: every split of the variance into drift and noise has its own Kalman filter and
    /// smoother and is weighted by how well it fits and how likely it was beforehand (the density of the drift's share r is 12 r (1 - r)², the log of the scale is flat); the level is the mean of that
    /// belief. So a best fit at the edge, without drift (at 12 weeks 6 of 10 seasons without drift, 3 of 10 with a weekly drift of half the noise) or without noise, is a note and no refusal: what is
    /// given only off the edge holds less than it says.</para>
    /// <para>Simulated with 12, 20 and 40 weekly tests, 90 % intervals of the latest level hold 89 to 92 of 100 where the weekly drift is 0.25, 0.5 or 1 times the noise, 91 to 95 without drift, 93 at twice
    /// the noise; of a level in hindsight 89 to 96. With both variances taken for known they would hold 75. The level has no trend of its own: where there is one, it lags behind, and at a trend of 0.3 times
    /// the noise a week, beside a drift of 0.25, the latest level's intervals hold 88.</para>
    /// <para>Sources: Harvey 1989, Forecasting, structural time series models and the Kalman filter; Durbin and Koopman 2012, Time series analysis by state space methods (from memory); for densities
    /// that stay off the edge Chung et al. 2013, Psychometrika 78:685-709 (from memory; the shape was chosen by simulation). Assumes normal noise and a level that moves by independent normal steps.</para>
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="options">Level and selection; null for the defaults.</param>
    /// <returns>The level, or <see cref="Refusal.TooFewSessions"/> below 12 weeks with an eligible test, <see cref="Refusal.ZeroVariance"/>, <see cref="Refusal.MixedProtocols"/>.</returns>
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
        return LocalLevel.Fit(values).Select(fit => Result(fit, mondays, values, totals.Count, selection, options.Level));
    }

    private static SeasonLevelResult Result(LocalLevel fit, DateOnly[] mondays, double?[] values, int observed, SessionSelection selection, ConfidenceLevel level)
    {
        var belief = new LevelBelief(values);
        Estimate Level(TMixture known, int seen, string method) => new(known.Mean, Unit.Seconds, seen, method) { StandardError = known.Deviation, Interval = known.Limits(level) };
        var tests = 0;
        return new SeasonLevelResult
        {
            AthleteId = selection.Sessions[0].AthleteId,
            Points = [.. mondays.Select((monday, week) => new SeasonLevelPoint(
                monday,
                values[week],
                Level(belief.At(week), values[week] is null ? tests : ++tests, "local level, Kalman filters weighted by fit"),
                Level(belief.InHindsight(week), observed, "local level, Kalman smoothers weighted by fit")))],
            Noise = new Estimate(Math.Sqrt(fit.ObservationVariance), Unit.Seconds, observed, "local level, maximum likelihood"),
            WeeklyDrift = new Estimate(Math.Sqrt(fit.LevelVariance), Unit.Seconds, observed, "local level, maximum likelihood"),
            SteadyWeight = fit.SteadyGain,
            Selection = selection,
            Notes = [.. Notes(fit, values.Length - observed), .. selection.Notes],
        };
    }

    private static IEnumerable<string> Notes(LocalLevel fit, int missing)
    {
        if (missing > 0) yield return FormattableString.Invariant($"{missing} weeks without a test: the level is carried on, its interval widens.");
        if (fit.LevelVariance == 0) yield return "A constant level with noise fits best; a drift that the noise hides is possible all the same, and the levels and their intervals count it.";
        if (fit.ObservationVariance == 0) yield return "A level that follows every test fits best; noise that the drift hides is possible all the same, and the levels and their intervals count it.";
        yield return "The level has no trend of its own: where there is one, it lags behind. Intervals count that drift and noise are not known apart.";
    }
}
