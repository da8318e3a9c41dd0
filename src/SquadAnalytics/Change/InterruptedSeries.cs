using SquadAnalytics.Internals;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Did a series jump, or bend, when the second block began?</summary>
public static partial class InterruptedSeries
{
    private const int NeededPerSegment = 8;
    private const int ShownPerSegment = 5;

    /// <summary>One athlete's session totals before and from a date.</summary>
    /// <remarks>
    /// W = b0 + b1 t + b2 P + b3 P (t - t0) by least squares, W the session total in seconds, t in weeks by true dates, P = 1 from the first test t0 on or after the date. b2 is the jump at t0 and b3 the change of slope,
    /// because P is multiplied by the time since t0 and not by t. t intervals with n - 4 degrees of freedom; Newey-West beside them with the factor n / (n - 4). Its squared standard error is a quadratic
    /// form e'Ae in the residuals: limits and p-value take the standard error times √(Var / (σ² tr(MA))), M the residual maker and Var the variance of the coefficient with independent errors, and tr(MA)² / tr((MA)²)
    /// degrees of freedom (after Bell and McCaffrey 2002, Survey Methodology 28:169-181; from memory). Assumes straight lines;
    /// without a comparison series anything else that began at t0 is in the jump. Source: Wagner et al. 2002, J Clin Pharm Ther 27:299-309.
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="from">First day of the second segment, named in advance.</param>
    /// <param name="options">Level, lag, selection; null for the defaults.</param>
    /// <returns>The lines, or <see cref="Refusal.TooFewPerSegment"/> below 5 tests in a segment (5 to 7 are shown without a verdict), <see cref="Refusal.WeaklyIdentified"/> where all tests of a segment have one date, or <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes, or the lag is not below the number of tests.</exception>
    public static Answer<InterruptedSeriesResult> Fit(IReadOnlyList<Session> sessions, DateOnly from, InterruptedSeriesOptions? options = null)
    {
        options ??= new InterruptedSeriesOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match(
            selection => Of([.. selection.Sessions.Select(session => new DatedTotal(session.Date, session.Total.GetOrThrow().Value))], from, options, selection, []),
            refusal => refusal);
    }

    private static Answer<InterruptedSeriesResult> Of(IReadOnlyList<DatedTotal> series, DateOnly from, InterruptedSeriesOptions options, SessionSelection selection, IReadOnlyList<string> notes)
    {
        var later = series.Count(test => test.Date >= from);
        var fewest = Math.Min(later, series.Count - later);
        if (fewest < ShownPerSegment) return new NotEstimable("the interrupted series", Refusal.TooFewPerSegment, ShownPerSegment, fewest, "tests in each segment");
        var start = series[series.Count - later].Date;
        double[] weeks = [.. series.Select(test => SeasonWeeks.Between(series[0].Date, test.Date))];
        double[] after = [.. series.Select(test => test.Date >= from ? 1.0 : 0)];
        double[] since = [.. series.Select(test => test.Date >= from ? SeasonWeeks.Between(start, test.Date) : 0)];
        double[] totals = [.. series.Select(test => test.Total)];
        return LeastSquares.Fit(totals, RegressionDesign.WithIntercept(totals.Length).Add("slope before", weeks).Add("jump", after).Add("slope change", since)).Match(
            fit => fit.AliasedColumns.Count > 0
                ? new NotEstimable("the interrupted series", Refusal.WeaklyIdentified, "tests of several dates in each segment", "tests of one date in a segment")
                : Result(fit, series, weeks, start, since[^1], fewest, options, selection, notes),
            refusal => refusal);
    }

    private static Answer<InterruptedSeriesResult> Result(
        LinearFit fit, IReadOnlyList<DatedTotal> series, double[] weeks, DateOnly start, double last, int fewest, InterruptedSeriesOptions options, SessionSelection selection, IReadOnlyList<string> notes)
    {
        string[] all = [.. Notes(fewest), .. notes, .. selection.Notes];
        Estimate Of(TEstimate number, double standardError, Unit unit, string method) =>
            TInterval.Of(number.Value, standardError, number.DegreesOfFreedom, unit, options.Level, series.Count, method).WithNotes(all);
        Estimate Plain(string name, Unit unit) => Of(fit.Coefficient(name), fit.Coefficient(name).StandardError, unit, "least squares, two lines");
        Estimate Serial(string name, Unit unit) => TInterval.OfSerial(fit, options.NeweyWestLag, name, unit, options.Level, "least squares, two lines").WithNotes(all);
        return fit.Contrast("effect at the end", [0, 0, 1, last]).Select(effect => new InterruptedSeriesResult
        {
            From = start,
            SlopeBefore = Plain("slope before", Unit.SecondsPerWeek),
            LevelChange = Plain("jump", Unit.Seconds),
            SlopeChange = Plain("slope change", Unit.SecondsPerWeek),
            EffectAtEnd = Of(effect, effect.StandardError, Unit.Seconds, "two lines: difference from the line before carried on"),
            SerialSlopeBefore = Serial("slope before", Unit.SecondsPerWeek),
            SerialLevelChange = Serial("jump", Unit.Seconds),
            SerialSlopeChange = Serial("slope change", Unit.SecondsPerWeek),
            ResidualStandardDeviation = TInterval.OfStandardDeviation(fit.ResidualStandardDeviation, fit.DegreesOfFreedom, Unit.Seconds, options.Level, series.Count, "residual SD about two lines"),
            DurbinWatson = Statistics.SerialCorrelation.DurbinWatson(fit.Residuals),
            SerialCorrelation = Statistics.SerialCorrelation.Lag1(fit.Residuals),
            Points = [.. series.Select((test, i) => new SeasonPoint(test.Date, weeks[i], test.Total, fit.Fitted[i]))],
            IsWithoutVerdict = fewest < NeededPerSegment,
            Selection = selection,
        });
    }

    private static IEnumerable<string> Notes(int fewest)
    {
        if (fewest < NeededPerSegment) yield return $"Only {fewest} tests in a segment ({NeededPerSegment} are needed): shown without a verdict.";
        yield return "Without a comparison series anything else that began on that date is part of the difference. Say \"differed by\", not \"improved because of\".";
    }
}

/// <summary>One value of a series.</summary>
internal readonly record struct DatedTotal(DateOnly Date, double Total);
