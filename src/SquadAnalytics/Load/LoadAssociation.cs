using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Load;

/// <summary>Do training load before a test and its session total go together?</summary>
public static class LoadAssociation
{
    private const int OwnNeeds = 10;
    private const string Measure = "the association of load and total";

    /// <summary>Within the athletes of a squad, with one slope for all.</summary>
    /// <remarks>
    /// <para>Analysis of covariance of the session total with an athlete factor and the load; r = sign(b) √(SS_x / (SS_x + SS_res)), b the slope in seconds per unit of load, SS_x what load explains of the sum of squares within athletes and SS_res the rest; observations - athletes - 1 degrees of freedom, interval by Fisher's
    /// transformation (Bakdash and Marusich 2017, Front Psychol 8:456). By default each athlete's own straight trend on weeks is taken out of both (one degree of freedom more per athlete), because
    /// both drift over a season. Changes from test to test share a test with their neighbours; their standard error is the larger of the plain one and of the one for independent noise of the tests.
    /// Several windows are adjusted after Benjamini and Hochberg 1995, J R Stat Soc B 57:289-300 (from memory).</para>
    /// <para>Load is known only where every day of the window is. Assumes one slope for all and independent residuals. An association does not say what the load did.</para>
    /// </remarks>
    /// <param name="sessions">Sessions of the squad, in any order.</param>
    /// <param name="days">What was written down day by day, of all athletes.</param>
    /// <param name="options">Windows, form, level, selection; null for the defaults.</param>
    /// <returns>The rows, each with an answer or what <see cref="RepeatedMeasuresCorrelation.Fit"/> refuses, or <see cref="Refusal.MixedProtocols"/>.</returns>
    public static Answer<LoadAssociationResult> Fit(IReadOnlyList<Session> sessions, IReadOnlyList<DayContext> days, LoadAssociationOptions? options = null)
    {
        options ??= new LoadAssociationOptions();
        return SessionSelection.Of(sessions, options.Selection).Select(selection => Of(selection, days, options, rows => Within(rows, options)));
    }

    /// <summary>For one athlete, by ranks.</summary>
    /// <remarks>Spearman's correlation from 10 tests on, its p-value and interval by t and Fisher's transformation for n tests, n - 1 about the trend, 1 + (n - 1)/1.5 for n changes, which share
    /// tests; Theil-Sen slope. By simulation (independent noise, 4,000 runs each) that holds the false rate at 10 to 11 % of 10 %. Ten tests say little: with r = 0.5 the 95 % limits are −0.19 to 0.86.
    /// Assumes tests that are independent given the load. Sources as in <see cref="SpearmanCorrelation"/> and <see cref="TheilSen"/>, which refuses above 3,000 tests.</remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="days">What was written down day by day.</param>
    /// <param name="options">Windows, form, level, selection; null for the defaults.</param>
    /// <returns>The rows, each with an answer or its refusal (<see cref="Refusal.TooFewSessions"/> below 10 pairs, <see cref="Refusal.WeaklyIdentified"/> below 5 dates for a trend, <see cref="Refusal.ZeroVariance"/> where load or total is constant), or <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes.</exception>
    public static Answer<LoadAssociationResult> OfOneAthlete(IReadOnlyList<Session> sessions, IReadOnlyList<DayContext> days, LoadAssociationOptions? options = null)
    {
        options ??= new LoadAssociationOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Select(selection => Of(selection, days, options, rows => Alone(rows, options)));
    }

    private static LoadAssociationResult Of(SessionSelection selection, IReadOnlyList<DayContext> days, LoadAssociationOptions options, Func<IReadOnlyList<LoadedTest>, OneWindow> fit)
    {
        ArgumentNullException.ThrowIfNull(days);
        var own = Circumstances.ByAthlete(days);
        var rows = options.Windows.Select(window =>
        {
            LoadedTest[] tests =
            [
                .. selection.Sessions.Select(session => (session, Load: own.GetValueOrDefault(session.AthleteId) is { } known ? TestContext.LoadBefore(known, session.Date, window.Nearest, window.Farthest) : null))
                    .Where(row => row.Load is not null).Select(row => new LoadedTest(row.session.AthleteId, row.session.Date.DayNumber / 7.0, row.Load!.Value, row.session.Total.GetOrThrow().Value)),
            ];
            return (window, Left: selection.Sessions.Count - tests.Length, Answer: fit(options.Form == LoadAssociationForm.Changes ? Changes(tests) : tests));
        }).ToList();
        double[] p = [.. rows.Select(row => row.Answer.Correlation.Match(r => r.PValue, _ => null)).OfType<double>()];
        var adjusted = new Queue<double>(MultipleTesting.BenjaminiHochberg(p));
        return new LoadAssociationResult
        {
            Rows = [.. rows.Select(row => new LoadAssociationRow
            {
                Window = row.window,
                Correlation = row.Answer.Correlation,
                Slope = row.Answer.Slope,
                AdjustedPValue = row.Answer.Correlation.Match(r => r.PValue, _ => null) is null ? null : new Estimate(adjusted.Dequeue(), Unit.Probability, p.Length, $"Benjamini-Hochberg over {p.Length} windows"),
                TestsWithoutLoad = row.Left,
                Athletes = row.Answer.Athletes,
            })],
            Form = options.Form,
            Selection = selection,
            Notes = [.. Notes(options), .. selection.Notes],
        };
    }

    private static OneWindow Within(IReadOnlyList<LoadedTest> tests, LoadAssociationOptions options) => RepeatedMeasuresCorrelation.Fit(
        [.. tests.Select(test => test.Athlete)], [.. tests.Select(test => test.Load)], [.. tests.Select(test => test.Total)],
        options.Form == LoadAssociationForm.AboutTrends ? [.. tests.Select(test => test.Week)] : null).Match(
        fit =>
        {
            var inflation = options.Form == LoadAssociationForm.Changes ? Inflation(tests, fit.DegreesOfFreedom) : 1;
            var slope = TInterval.Of(fit.Slope.Value, inflation * fit.Slope.StandardError, fit.DegreesOfFreedom, Unit.SecondsPerLoad, options.Level, fit.Observations, $"one slope within athletes, {options.Form.Words()}");
            return new OneWindow(
                new Estimate(fit.R, Unit.None, fit.Observations, $"correlation within {fit.Athletes} athletes, {options.Form.Words()}")
                {
                    Interval = PearsonCorrelation.FisherInterval(fit.R, (fit.DegreesOfFreedom - 1) / (inflation * inflation), options.Level),
                    DegreesOfFreedom = fit.DegreesOfFreedom,
                    PValue = slope.PValue,
                },
                slope) { Athletes = fit.Athletes };
        },
        refusal => new OneWindow(refusal, refusal));

    /// <summary>By how much neighbouring changes, which share a test, make a slope less certain than independent ones would; 1 or more.</summary>
    /// <remarks>With D the covariance of changes of independent tests (2 on the diagonal, -1 beside it) the slope's variance is σ² x'Dx / (x'x)², and RSS / tr(MD) estimates σ², M the residual maker;
    /// without, it is RSS / df / x'x. Returned is the root of their ratio.</remarks>
    private static double Inflation(IReadOnlyList<LoadedTest> changes, int degreesOfFreedom)
    {
        double squares = 0, joint = 0, trace = 0;
        foreach (var own in changes.GroupBy(change => change.Athlete, StringComparer.Ordinal).Select(group => group.Select(change => change.Load).ToArray()).Where(own => own.Length > 1))
        {
            var mean = Descriptive.Mean(own);
            for (var i = 0; i < own.Length; i++)
            {
                squares += (own[i] - mean) * (own[i] - mean);
                joint += 2 * (own[i] - mean) * (own[i] - mean - (i + 1 < own.Length ? own[i + 1] - mean : 0));
            }

            trace += 2 * own.Length - 2.0 / own.Length;
        }

        return Math.Sqrt(Math.Max(1, joint / squares * degreesOfFreedom / (trace - joint / squares)));
    }

    private static OneWindow Alone(IReadOnlyList<LoadedTest> tests, LoadAssociationOptions options)
    {
        if (tests.Count < OwnNeeds)
        {
            var refusal = new NotEstimable(Measure, Refusal.TooFewSessions, OwnNeeds, tests.Count, options.Form == LoadAssociationForm.Changes ? "changes with known load" : "tests with known load");
            return new OneWindow(refusal, refusal);
        }

        // Sums of decimals: what differs in the last bits is a tie.
        const int decimals = 6;
        double[] weeks = [.. tests.Select(test => test.Week)], loads = [.. tests.Select(test => Math.Round(test.Load, decimals))], totals = [.. tests.Select(test => Math.Round(test.Total, decimals))];
        if (options.Form == LoadAssociationForm.AboutTrends)
        {
            if (weeks.Distinct().Count() < OwnNeeds / 2) return new OneWindow(OneDate, OneDate);
            loads = [.. LeastSquares.FitLine(weeks, loads).GetOrThrow().Residuals];
            totals = [.. LeastSquares.FitLine(weeks, totals).GetOrThrow().Residuals];
        }

        // Tests that count as independent: a trend takes one, changes share tests with their neighbours.
        var independent = options.Form switch { LoadAssociationForm.AboutTrends => tests.Count - 1, LoadAssociationForm.Changes => 1 + (tests.Count - 1) / 1.5, _ => tests.Count };
        return new OneWindow(
            SpearmanCorrelation.Fit(loads, totals).Select(fit => new Estimate(fit.Rho, Unit.None, tests.Count, $"Spearman's correlation, {options.Form.Words()}") { Interval = fit.Interval(options.Level, independent), PValue = fit.PValueFor(independent) }),
            TheilSen.Fit(loads, totals, options.Level).Select(fit => new Estimate(fit.Slope, Unit.SecondsPerLoad, tests.Count, $"Theil-Sen, {options.Form.Words()}") { Interval = fit.Interval }));
    }

    private static NotEstimable OneDate { get; } = new(Measure, Refusal.WeaklyIdentified, $"tests of {OwnNeeds / 2} dates for a trend", "fewer dates");

    /// <summary>Changes from one test of an athlete to the next that has a load.</summary>
    private static LoadedTest[] Changes(IReadOnlyList<LoadedTest> tests) =>
        [.. tests.GroupBy(test => test.Athlete, StringComparer.Ordinal).SelectMany(own => own.Zip(own.Skip(1), (before, after) => after with { Load = after.Load - before.Load, Total = after.Total - before.Total }))];

    private static IEnumerable<string> Notes(LoadAssociationOptions options)
    {
        if (options.Form == LoadAssociationForm.AsTheyStand) yield return "Load and totals both drift over a season: taken as they stand they may go together for reasons of the calendar alone.";
        if (options.Windows.Count > 1) yield return string.Create(CultureInfo.InvariantCulture, $"{options.Windows.Count} windows were tried; read the adjusted p-values.");
        yield return "An association within athletes does not say what the load did to the times. With 10 pairs and r = 0.5 the 95 % limits are −0.19 to 0.86: it could be anything.";
    }

    /// <summary>A test with the load of its window.</summary>
    private sealed record LoadedTest(string Athlete, double Week, double Load, double Total);

    private sealed record OneWindow(Answer<Estimate> Correlation, Answer<Estimate> Slope)
    {
        public int Athletes { get; init; } = 1;
    }
}
