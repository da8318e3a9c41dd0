using SquadAnalytics.Internals;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Reliability;

/// <summary>Other ways to the same number: one athlete's own noise, and the mixed model.</summary>
public static partial class TypicalError
{
    private const int OwnNeeds = 10;

    /// <summary>One athlete's own noise: the residual standard deviation about the straight trend over true dates.</summary>
    /// <remarks>Least squares of the measure on weeks, m - 2 degrees of freedom. Assumes a straight trend and independent tests. Blocks, windows and grouping do not apply.
    /// Source: Hopkins 2000, Sports Med 30:1-15, applied to one athlete about a straight line.</remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="options">Measure, level, selection; null for the defaults.</param>
    /// <returns>The error, or <see cref="Refusal.TooFewSessions"/> below 10 eligible sessions, <see cref="Refusal.ZeroVariance"/>, <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes.</exception>
    public static Answer<TypicalErrorResult> OfOneAthlete(IReadOnlyList<Session> sessions, TypicalErrorOptions? options = null)
    {
        options ??= new TypicalErrorOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match(selection => Own(selection, options), refusal => refusal);
    }

    /// <summary>The residual standard deviation of a mixed model, to stand beside that of least squares where athletes were absent.</summary>
    /// <remarks>Tests as fixed effects and athletes within windows as random intercepts, by REML, in the unit of the measure. With complete windows it is the same number; with
    /// absences it also uses what differences between athletes tell of a test.
    /// Assumes normal levels and noise, and that absence says nothing about the times. Source: Patterson and Thompson 1971, Biometrika 58:545-554 (from
    /// memory).</remarks>
    /// <param name="sessions">Sessions of the whole squad, in any order.</param>
    /// <param name="options">Measure, window, blocks, selection; null for the defaults.</param>
    /// <returns>The standard deviation, or what <see cref="Fit(IReadOnlyList{Session}, TypicalErrorOptions?)"/> or the model refuses, <see cref="Refusal.TooManyObservations"/> above 300 tests included.</returns>
    public static Answer<Estimate> OfMixedModel(IReadOnlyList<Session> sessions, TypicalErrorOptions? options = null)
    {
        options ??= new TypicalErrorOptions();
        if (Fit(sessions, options).Refusal is { } refusal) return refusal;
        var selection = SessionSelection.Of(sessions, options.Selection).GetOrThrow();
        var cells = TestSeries.Windows(selection.Sessions, options.Blocks, options.Grouping, options.WindowLength, TestSeries.Value(options.Measure, Scale.Seconds))
            .SelectMany((window, number) => window.Select(cell => (Test: FormattableString.Invariant($"{number}/{cell.Test}"), Athlete: FormattableString.Invariant($"{number}/{cell.Athlete}"), cell.Value))).ToList();
        var tests = cells.Select(cell => cell.Test).Distinct(StringComparer.Ordinal).Count();
        if (tests > RegressionDesign.MostColumns) return NotEstimable.TooMany("the typical error by a mixed model", RegressionDesign.MostColumns, tests, "tests");
        var unit = options.Measure.UnitOf();
        var design = new MixedDesign(
            new DesignColumn(options.Measure.Words(), [.. cells.Select(cell => cell.Value)], unit),
            DesignColumn.Of(RegressionDesign.WithIntercept(cells.Count).AddFactor("test", [.. cells.Select(cell => cell.Test)]), unit),
            [RandomTerm.Intercept("athlete", [.. cells.Select(cell => cell.Athlete)])]);
        return MixedModel.Fit(design, new MixedModelOptions { ConfidenceLevel = options.Level }).Select(fit => fit.ResidualStandardDeviation.WithNotes(selection.Notes));
    }

    private static Answer<TypicalErrorResult> Own(SessionSelection selection, TypicalErrorOptions options)
    {
        var m = selection.Sessions.Count;
        if (m < OwnNeeds) return new NotEstimable("the athlete's own typical error", Refusal.TooFewSessions, OwnNeeds, m, "eligible sessions");
        double[] weeks = [.. selection.Sessions.Select(session => (session.Date.DayNumber - selection.Sessions[0].Date.DayNumber) / 7.0)];
        if (weeks[^1] == 0) return new NotEstimable("the athlete's own typical error", Refusal.ZeroVariance, "sessions of several dates", "one date");
        Answer<Estimate> About(Scale scale, Unit unit)
        {
            var fit = LeastSquares.FitLine(weeks, [.. selection.Sessions.Select(TestSeries.Value(options.Measure, scale))]).GetOrThrow();
            return fit.ResidualStandardDeviation > 0
                ? TInterval.OfStandardDeviation(fit.ResidualStandardDeviation, fit.DegreesOfFreedom, unit, options.Level, m, "residual SD about the athlete's own straight trend", scale).WithNotes(selection.Notes)
                : new NotEstimable("the athlete's own typical error", Refusal.ZeroVariance, "tests that vary about the trend", "tests that do not");
        }

        return About(Scale.Seconds, options.Measure.UnitOf()).Select(error => new TypicalErrorResult
        {
            Estimate = error,
            Variation = Percentage(selection, options, () => About(Scale.Log, Unit.Percent)),
            Measure = options.Measure,
            Athletes = 1,
            Windows = 1,
            LargestContributor = selection.Sessions[0].AthleteId,
            LargestContribution = new Percent(100),
        });
    }
}
