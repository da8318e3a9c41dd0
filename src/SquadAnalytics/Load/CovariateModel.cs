using System.Globalization;
using SquadAnalytics.Change;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Load;

/// <summary>How session totals differ with sleep, sparring, load, body mass and temperature before the test.</summary>
public static class CovariateModel
{
    private const int NeededAthletes = 6;
    private const string Measure = "the model of circumstances";
    private const string Week = "week";

    /// <summary>Fits a mixed model of the session totals on circumstances, each split into what is usual for the athlete and what is not.</summary>
    /// <remarks>
    /// <para>W_it = β0 + β1 week_it + Σ (β_B x̄_i + β_W (x_it - x̄_i)) + u_i + e_it by REML, W the session total in seconds, x a circumstance, u the athletes' levels, e noise, x̄_i the athlete's mean over the tests in the model. β_W compares an athlete's tests with each other and is
    /// the one to read; β_B compares athletes. Only what is known before the test may enter: the rating or heart rate of the session itself is an outcome, and adjusting for it would take away
    /// part of what is measured. Assumes straight lines and the same effect for all athletes; circumstances were not set by lot. Linear in tests and athletes.</para>
    /// <para>Sources, from memory: Bates et al. 2015, J Stat Softw 67(1); the split into mean and deviation: Neuhaus and Kalbfleisch 1998, Biometrics 54:638-645.</para>
    /// </remarks>
    /// <param name="sessions">Sessions of the squad, in any order.</param>
    /// <param name="days">What was written down day by day, of all athletes.</param>
    /// <param name="options">Circumstances, trend, level, selection; null for the defaults.</param>
    /// <returns>The model, or <see cref="Refusal.NotComparable"/> for an outcome of the test among the circumstances, <see cref="Refusal.TooFewAthletes"/> below 6 athletes with two tests for which all are
    /// written down, <see cref="Refusal.ZeroVariance"/> where no circumstance varies, <see cref="Refusal.MixedProtocols"/>, or what the mixed model refuses.</returns>
    public static Answer<CovariateModelResult> Fit(IReadOnlyList<Session> sessions, IReadOnlyList<DayContext> days, CovariateModelOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(days);
        options ??= new CovariateModelOptions();
        foreach (var outcome in options.Covariates.Where(covariate => covariate.IsOutcome())) return outcome.Refused(Measure);
        return SessionSelection.Of(sessions, options.Selection).Match(selection => Of(selection, days, options), refusal => refusal);
    }

    private static Answer<CovariateModelResult> Of(SessionSelection selection, IReadOnlyList<DayContext> days, CovariateModelOptions options)
    {
        var own = Circumstances.ByAthlete(days);
        var none = new Dictionary<DateOnly, DayContext>();
        var tests = selection.Sessions.Select(session => (Session: session, Values: options.Covariates.Select(covariate => Circumstances.Of(covariate, own.GetValueOrDefault(session.AthleteId, none), session)).ToArray())).ToList();
        var athletes = tests.Where(test => test.Values.All(value => value is not null)).GroupBy(test => test.Session.AthleteId, StringComparer.Ordinal).Where(group => group.Count() > 1)
            .OrderBy(group => group.Key, StringComparer.Ordinal).ToList();
        if (athletes.Count < NeededAthletes) return new NotEstimable(Measure, Refusal.TooFewAthletes, NeededAthletes, athletes.Count, "athletes with two tests for which all circumstances are written down");

        Session[] used = [.. athletes.SelectMany(group => group.Select(test => test.Session))];
        var splits = options.Covariates.Select((_, k) => Split.Of([.. athletes.Select(group => group.Select(test => test.Values[k]!.Value).ToArray())])).ToList();
        if (splits.TrueForAll(split => !split.VariesWithin && !split.VariesBetween)) return new NotEstimable(Measure, Refusal.ZeroVariance, "circumstances that vary", "circumstances that do not");
        List<DesignColumn> columns = [DesignColumn.Intercept(used.Length, Unit.Seconds)];
        if (options.WithTrend) columns.Add(new DesignColumn(Week, [.. used.Select(session => SeasonWeeks.Between(selection.Sessions[0].Date, session.Date))], Unit.SecondsPerWeek));
        for (var k = 0; k < splits.Count; k++)
        {
            var covariate = options.Covariates[k];
            if (splits[k].VariesWithin) columns.Add(new DesignColumn(Name(covariate, "own deviation"), splits[k].Deviations, covariate.SlopeUnit()));
            if (splits[k].VariesBetween) columns.Add(new DesignColumn(Name(covariate, "athlete's mean"), splits[k].Means, covariate.SlopeUnit()));
        }

        var design = new MixedDesign(new DesignColumn("total", [.. used.Select(session => session.Total.GetOrThrow().Value)], Unit.Seconds), columns, [RandomTerm.Intercept("athlete", [.. used.Select(session => session.AthleteId)])]);
        return MixedModel.Fit(design, new MixedModelOptions { ConfidenceLevel = options.Level, DegreesOfFreedom = options.DegreesOfFreedom }).Select(fit => new CovariateModelResult
        {
            Effects = [.. options.Covariates.Select((covariate, k) => new CovariateEffect(
                covariate,
                splits[k].VariesWithin ? fit.Fixed(Name(covariate, "own deviation")).Estimate : new NotEstimable($"the {covariate.Words()} within athletes", Refusal.ZeroVariance, "tests of an athlete that differ in it", "tests that do not"),
                splits[k].VariesBetween ? fit.Fixed(Name(covariate, "athlete's mean")).Estimate : new NotEstimable($"the {covariate.Words()} between athletes", Refusal.ZeroVariance, "athletes whose means differ", "means that do not"),
                tests.Count(test => test.Values[k] is null)))],
            Trend = options.WithTrend ? fit.Fixed(Week).Estimate : null,
            Athletes = athletes.Count,
            Tests = used.Length,
            Model = fit,
            Selection = selection,
            Notes = [.. Notes(options, tests.Count - used.Length), .. fit.Notes, .. selection.Notes],
        });
    }

    private static string Name(Circumstance covariate, string part) => $"{covariate.Words()}, {part}";

    private static IEnumerable<string> Notes(CovariateModelOptions options, int leftOut)
    {
        if (leftOut > 0) yield return string.Create(CultureInfo.InvariantCulture, $"{leftOut} eligible tests are left out: a circumstance is not written down, or it is the athlete's only one.");
        if (options.Covariates.Count > 1) yield return string.Create(CultureInfo.InvariantCulture, $"{options.Covariates.Count} circumstances were looked at together.");
        yield return "Effects within athletes compare an athlete's tests with each other; those between athletes compare who they are. Circumstances were not set by lot.";
    }

    /// <summary>One circumstance as the athletes' means and the deviations from them, test by test.</summary>
    private sealed record Split(double[] Means, double[] Deviations, bool VariesBetween, bool VariesWithin)
    {
        public static Split Of(IReadOnlyList<double[]> athletes)
        {
            double[] means = [.. athletes.Select(own => Descriptive.Mean(own))];
            return new Split(
                [.. athletes.SelectMany((own, i) => own.Select(_ => means[i]))],
                [.. athletes.SelectMany((own, i) => own.Select(value => value - means[i]))],
                means.Max() - means.Min() > 1e-9 * (1 + Math.Abs(means[0])),
                athletes.Any(own => own.Any(value => value != own[0])));
        }
    }
}
