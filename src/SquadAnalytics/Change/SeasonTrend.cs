using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>How fast one athlete's session total changes over a season.</summary>
public static class SeasonTrend
{
    private const int NeededTests = 5;
    private const int NeededWeeks = 4;
    private const int RobustNeeds = 8;
    private const double NotableCorrelation = 0.3;

    /// <summary>Fits a straight line to the session totals on weeks.</summary>
    /// <remarks>
    /// <para>W_i = a + b w_i + e_i by least squares, W the session totals in seconds, w in weeks since the first eligible test by true dates, t interval with m - 2 degrees of freedom. Missing weeks stay missing: nothing is
    /// filled in. The relative slope is 100 (exp(b) - 1) of the fit to ln W. Lag-1 correlation r1 = Σ e_i e_(i-1) / Σ e_i². Assumes a straight trend and independent tests; where tests
    /// resemble their neighbours see the Newey-West slope (Newey and West 1987, Econometrica 55:703-708, from memory, with the small-sample factor m / (m - 2); its limits as in
    /// <see cref="InterruptedSeries"/>, because plain ones cover far too seldom in a season).</para>
    /// <para>Theil-Sen slope: median of the pairwise slopes, interval from Kendall's ranks (Sen 1968, J Am Stat Assoc 63:1379-1389; from memory), its p-value that of Kendall's S;
    /// refused above 3,000 tests, because its time grows with their square. The rest grows linearly.</para>
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="options">Level, lag, selection; null for the defaults.</param>
    /// <returns>The trend, or <see cref="Refusal.TooFewSessions"/> below 5 eligible sessions or where they span less than 4 weeks, or <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes, or the lag is not below the number of tests.</exception>
    public static Answer<SeasonTrendResult> Fit(IReadOnlyList<Session> sessions, SeasonTrendOptions? options = null)
    {
        options ??= new SeasonTrendOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match(selection => Of(selection, options), refusal => refusal);
    }

    private static Answer<SeasonTrendResult> Of(SessionSelection selection, SeasonTrendOptions options)
    {
        var m = selection.Sessions.Count;
        var weeks = SeasonWeeks.Of(selection.Sessions);
        var span = m == 0 ? 0 : weeks[^1];
        if (m < NeededTests || span < NeededWeeks)
            return new NotEstimable("the season trend", Refusal.TooFewSessions, $"{NeededTests} eligible sessions over {NeededWeeks} weeks", FormattableString.Invariant($"{m} eligible sessions over {span:0.#} weeks"));

        double[] totals = [.. selection.Sessions.Select(TestSeries.Value(SessionMeasure.Total, Scale.Seconds))];
        var line = LeastSquares.FitLine(weeks, totals).GetOrThrow();
        var relative = LeastSquares.FitLine(weeks, [.. totals.Select(total => Math.Log(total))]).GetOrThrow();
        var serial = SerialCorrelation.Lag1(line.Residuals);
        string[] notes = [.. Notes(selection, serial, m)];
        Estimate Slope(TEstimate slope, Unit unit, string method) =>
            TInterval.Of(slope.Value, slope.StandardError, slope.DegreesOfFreedom, unit, options.Level, m, method).WithNotes(notes);
        var seconds = line.Coefficient("slope");
        var percent = relative.Coefficient("slope");
        return new SeasonTrendResult
        {
            AthleteId = selection.Sessions[0].AthleteId,
            Slope = Slope(seconds, Unit.SecondsPerWeek, "least squares on weeks"),
            RelativeSlope = Slope(percent, Unit.PercentPerWeek, "least squares of logarithms on weeks"),
            SerialSlope = TInterval.OfSerial(line, options.NeweyWestLag, "slope", Unit.SecondsPerWeek, options.Level, "least squares on weeks").WithNotes(notes),
            RobustSlope = Robust(weeks, totals, options.Level),
            ResidualStandardDeviation = TInterval.OfStandardDeviation(line.ResidualStandardDeviation, line.DegreesOfFreedom, Unit.Seconds, options.Level, m, "residual SD about the straight trend"),
            SerialCorrelation = serial is { } r1
                ? new Estimate(r1, Unit.None, m, "lag-1 correlation of the residuals, by order of tests")
                : new NotEstimable("the serial correlation", Refusal.ZeroVariance, "tests that vary about the trend", "tests that do not"),
            Points = [.. selection.Sessions.Select((session, i) => new SeasonPoint(session.Date, weeks[i], totals[i], line.Fitted[i]))],
            Selection = selection,
        };
    }

    private static Answer<Estimate> Robust(double[] weeks, double[] totals, ConfidenceLevel level) => totals.Length < RobustNeeds
        ? new NotEstimable("the Theil-Sen slope", Refusal.TooFewSessions, RobustNeeds, totals.Length, "eligible sessions")
        : TheilSen.Fit(weeks, totals, level).Select(fit => new Estimate(fit.Slope, Unit.SecondsPerWeek, totals.Length, "Theil-Sen, interval from Kendall ranks")
        {
            Interval = fit.Interval,
            PValue = fit.Kendall.PValue,
            Notes = fit.AchievedConfidence is { } achieved
                ? [FormattableString.Invariant($"The interval's confidence is {100 * achieved:0.0} %: ranks of {totals.Length} tests cannot hit every level.")]
                : [],
        });

    private static IEnumerable<string> Notes(SessionSelection selection, double? serial, int m)
    {
        if (serial is { } r1 && Math.Abs(r1) > NotableCorrelation)
            yield return FormattableString.Invariant($"Neighbouring tests are correlated (r1 {r1:0.00} over {m} tests): the interval may be too {(r1 > 0 ? "narrow" : "wide")}; see the Newey-West slope.");
        yield return "Improvement flattens: the line holds between the first and the last test only. Practice with the test is part of the slope.";
        foreach (var note in selection.Notes) yield return note;
    }
}
