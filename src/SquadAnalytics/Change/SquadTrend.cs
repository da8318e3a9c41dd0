using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>How fast a squad's session totals change over a season, and how athletes differ in level and slope.</summary>
public static partial class SquadTrend
{
    private const int NeededAthletes = 6;
    private const int TestsForSlopes = 3;
    private const int TestsForOwnSlope = 5;
    private const string Measure = "the squad's season";
    private const string Athlete = "athlete";
    private const string Week = "week";

    /// <summary>What has to be said of the athletes' slopes.</summary>
    private const string SlopesNote = "Slopes of athletes come from their own lines, pulled toward the squad also where the model has one slope for all; their intervals count that the squad's mean, its spread and the noise are not known.";

    /// <summary>Fits a mixed model of the session totals of all athletes.</summary>
    /// <remarks>
    /// <para>W_it = β0 + β1 w_it + u0_i + u1_i w_it + e_it by REML, W the session total in seconds, u the athletes' deviations, e noise, (u0, u1) normal and correlated, w in weeks from the date of the levels, by true dates. Where the variances cannot all be told
    /// apart (a singular fit) the model is fitted again without the correlation, then without the slopes, and <see cref="SquadTrendResult.Form"/> says which was used. Athletes' slopes are
    /// asked for where 6 athletes or more have 3 tests or more. Degrees of freedom are Satterthwaite's by default; they are contested and unsafe below about 6 athletes, so that the plain t
    /// over the athletes' own slopes stands beside them.</para>
    /// <para>Levels and deviations of athletes are best linear unbiased predictions, pulled toward the squad. The limits of a level are those of t: where 6 athletes have 3 dates, the noise of a test is the
    /// athletes' pooled scatter about their own lines, which has Σ(n_i - 2) degrees of freedom whatever form of the model was used; with the model's own noise, the smaller of two by the choice of the
    /// form, 90 % intervals would hold 89 of 100 at 4 tests; they hold 90 (12 athletes, 4 to 12 tests, set noise 1 to 3 %).</para>
    /// <para>With the variances taken for known, intervals of athletes' slopes would hold 80 of 100 where 90 are asked for: a slope is therefore the posterior of the athlete's own least-squares slope b_i ~ N(true slope, σ² / Σ(w - w̄)²), true slopes ~ N(μ, ω²), μ, ω and σ unknown; ω = 0 is believed as far as the slopes differ
    /// by less than they err (simulated: 90 % intervals hold 88 to 92 of 100 from 6 tests), without the correlation with levels; the squad's slope plus the deviation is what other software gives. It needs 3 dates, and
    /// 6 athletes with 5: where all have 4 tests and the spread of slopes is a quarter of what a slope errs, the intervals would hold 94. It does not ask whether the model has kept slopes: given only where it has, they
    /// would hold more than they say.</para>
    /// <para>The belief that ω is at most w is the upper tail of F with k - 3 and ν degrees of freedom at Q(w²) / (k - 3), with
    /// Q(w²) = Σ (b_i - m)² / (w² + s_i²), k the number of slopes, s_i their standard errors with ν degrees of freedom, m their mean weighted by 1 / (w² + s_i²).
    /// Given ω, a true slope is t with ν + k - 3 degrees of freedom about a b_i + (1 - a) m, a = ω² / (ω² + s_i²), its squared scale (ν + Q) / (ν + k - 3) times a s_i² + (1 - a)² / Σ 1 / (ω² + s_j²).</para>
    /// <para>Assumes straight trends, one residual variance, and tests that are missing at random given those
    /// that were done. Time grows linearly with tests and athletes. Sources: Patterson and Thompson 1971, Biometrika 58:545-554; Bates et al. 2015, J Stat Softw 67(1); Kenward and Roger 1997,
    /// Biometrics 53:983-997; Robinson 1991, Stat Sci 6:15-32 (all from memory).</para>
    /// </remarks>
    /// <param name="sessions">All sessions of the squad, in any order.</param>
    /// <param name="options">Level, degrees of freedom, date of the levels, selection; null for the defaults.</param>
    /// <returns>The season, or <see cref="Refusal.TooFewAthletes"/> below 6 athletes with an eligible test, <see cref="Refusal.TooFewSessions"/> where all tests have one date,
    /// <see cref="Refusal.MixedProtocols"/>, or what the mixed model refuses.</returns>
    public static Answer<SquadTrendResult> Fit(IReadOnlyList<Session> sessions, SquadTrendOptions? options = null)
    {
        options ??= new SquadTrendOptions();
        return SessionSelection.Of(sessions, options.Selection).Match(selection => Of(selection, options), refusal => refusal);
    }

    private static Answer<SquadTrendResult> Of(SessionSelection selection, SquadTrendOptions options)
    {
        var athletes = selection.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).OrderBy(own => own.Key, StringComparer.Ordinal).ToList();
        if (athletes.Count < NeededAthletes) return new NotEstimable(Measure, Refusal.TooFewAthletes, NeededAthletes, athletes.Count, "athletes with an eligible test");
        DateOnly first = selection.Sessions[0].Date, last = selection.Sessions[^1].Date;
        if (first == last) return new NotEstimable(Measure, Refusal.TooFewSessions, "tests of several dates", "tests of one date");

        var levelOn = options.LevelOn ?? first.AddDays((last.DayNumber - first.DayNumber) / 2);
        OwnTests[] own = [.. athletes.Select(tests => OwnTests.Of(tests.Key, [.. tests], levelOn))];
        var withSlopes = own.Count(tests => tests.Dates >= TestsForSlopes);
        return Model(own, total => total, Unit.Seconds, withSlopes, options).Select(fit =>
            Result(fit, Model(own, Math.Log, Unit.LogSeconds, withSlopes, options), own, levelOn, withSlopes, SeasonWeeks.Between(first, last), selection, options));
    }

    private static Answer<MixedFit> Model(OwnTests[] own, Func<double, double> scale, Unit unit, int withSlopes, SquadTrendOptions options)
    {
        string[] groups = [.. own.SelectMany(tests => tests.Weeks.Select(_ => tests.AthleteId))];
        var week = new DesignColumn(Week, [.. own.SelectMany(tests => tests.Weeks)], unit == Unit.Seconds ? Unit.SecondsPerWeek : Unit.None);
        return MixedModel.Fit(
            new MixedDesign(
                new DesignColumn("total", [.. own.SelectMany(tests => tests.Totals).Select(scale)], unit),
                [DesignColumn.Intercept(groups.Length, unit), week],
                [withSlopes >= NeededAthletes ? RandomTerm.InterceptAndSlope(Athlete, groups, week) : RandomTerm.Intercept(Athlete, groups)]),
            new MixedModelOptions { ConfidenceLevel = options.Level, DegreesOfFreedom = options.DegreesOfFreedom });
    }

    private static SquadTrendResult Result(
        MixedFit fit, Answer<MixedFit> relative, OwnTests[] own, DateOnly levelOn, int withSlopes, double span, SessionSelection selection, SquadTrendOptions options)
    {
        var form = fit.VarianceComponents.Count == 1 ? SquadTrendForm.LevelsOnly : fit.Correlations.Count > 0 ? SquadTrendForm.CorrelatedLevelsAndSlopes : SquadTrendForm.LevelsAndSlopes;
        var noSlopes = withSlopes < NeededAthletes
            ? TooFewLines(withSlopes)
            : new NotEstimable("how athletes' slopes differ", Refusal.BoundarySolution, "slopes that differ by more than the noise of the tests", "slopes without variance");
        var rows = AthletesOf(fit, own, form, noSlopes, options.Level);
        return new SquadTrendResult
        {
            Slope = fit.Fixed(Week).Estimate.WithNotes([.. Notes(fit, form, withSlopes, rows.Any(row => row.Slope.IsEstimated), selection)]),
            RelativeSlope = relative.Select(logs => Relative(logs, options.Level)),
            MeanOfOwnSlopes = MeanOfOwnSlopes(own, options.Level),
            Level = fit.Fixed(RegressionDesign.Intercept).Estimate,
            LevelOn = levelOn,
            LevelSpread = fit.VarianceComponents[0].StandardDeviation,
            SlopeSpread = form == SquadTrendForm.LevelsOnly ? noSlopes : fit.VarianceComponents[1].StandardDeviation,
            Correlation = form switch
            {
                SquadTrendForm.CorrelatedLevelsAndSlopes => new Estimate(fit.Correlations[0].Correlation!.Value, Unit.None, own.Length, "linear mixed model, REML"),
                SquadTrendForm.LevelsAndSlopes => new NotEstimable("the correlation of levels and slopes", Refusal.BoundarySolution, "a correlation between -1 and 1", "one on the edge"),
                _ => noSlopes,
            },
            ResidualStandardDeviation = fit.ResidualStandardDeviation,
            Form = form,
            Athletes = rows,
            SpanWeeks = span,
            Model = fit,
            Selection = selection,
        };
    }

    private static Estimate Relative(MixedFit logs, ConfidenceLevel level)
    {
        var slope = logs.Fixed(Week).Estimate;
        return TInterval.Of(slope.Value, slope.StandardError!.Value, slope.DegreesOfFreedom ?? double.PositiveInfinity, Unit.PercentPerWeek, level, slope.Observations, $"{slope.Method}, logarithms").WithNotes(logs.Notes);
    }

    private static Answer<Estimate> MeanOfOwnSlopes(OwnTests[] own, ConfidenceLevel level)
    {
        double[] slopes = [.. own.Where(tests => tests.Dates >= TestsForSlopes).Select(tests => tests.Slope!.Value)];
        return slopes.Length < NeededAthletes
            ? new NotEstimable("the mean of the athletes' own slopes", Refusal.TooFewAthletes, NeededAthletes, slopes.Length, $"athletes with {TestsForSlopes} tests")
            : TInterval.OfMean(slopes, Unit.SecondsPerWeek, level, "one-sample t over the athletes' least-squares slopes");
    }

    private static IEnumerable<string> Notes(MixedFit fit, SquadTrendForm form, int withSlopes, bool areSlopesGiven, SessionSelection selection)
    {
        yield return $"The model that was used: {form.Words()}.";
        if (withSlopes < NeededAthletes) yield return $"Slopes of athletes were not asked for: only {withSlopes} athletes have {TestsForSlopes} tests or more, {NeededAthletes} are needed.";
        foreach (var note in fit.Notes) yield return note;
        yield return "Levels and slopes of athletes are pulled toward the squad, those with few tests the most.";
        if (areSlopesGiven) yield return SlopesNote;
        yield return "Tests that were missed are taken to say nothing beyond those that were done. Practice with the test, season and growth are part of the slope.";
        foreach (var note in selection.Notes) yield return note;
    }
}
