using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>One model of the set times of several sessions: what is common to the squad, and who slows more than the others.</summary>
public static class ProfileModel
{
    private const int NeededSessions = 4;
    private const int NeededAthletes = 6;
    private const int MostSessionsOfOne = 300;
    private const string Measure = "the profile model";
    private const string Athlete = "athlete";
    private const string Late = "late";

    /// <summary>Fits a mixed model of the logarithms of set times.</summary>
    /// <remarks>
    /// <para>ln t_isk = μ + h_k + u_i + v_is + d_i [k &gt; b] + e_isk by REML, with athletes' levels u, sessions v, athletes' late effects d and set noise e independent and normal. Late contrast =
    /// mean(h_k, k &gt; b) - mean(h_k, k &lt;= b); kink contrast: the part beyond a straight line over the sets. d needs 6 athletes with 4 sessions; where it shows no variance (a singular fit) it is left
    /// out and the notes say so. One athlete: sessions are the only random part.</para>
    /// <para>An athlete's late contrast is the posterior of the mean c_i of the own sessions' late contrasts, c_i ~ N(true contrast, σ² / m_i), true contrasts ~ N(μ, ω²), μ, ω and σ unknown; ω = 0 is
    /// believed as far as the c_i differ by less than they err (the belief in ω of <see cref="Change.SquadTrend.Fit"/>, c_i for b_i; simulated: 90 % intervals hold 88 to 92 of 100), because the model's predictions take the variances for known; they stand beside it as deviations.</para>
    /// <para>Assumes that sets of a session are equally correlated and equally noisy, which the contrasts session by session (<see cref="LateSlowdown"/>) do not. The effort grows with the cube of the
    /// sessions of one athlete (at most 300), and linearly with athletes. Source: Bates et al. 2015, J Stat Softw 67(1) (from memory).</para>
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete or of several, in any order.</param>
    /// <param name="options">b, degrees of freedom, level, selection.</param>
    /// <returns>The model, or <see cref="Refusal.TooFewSessions"/> below 4 eligible sessions, <see cref="Refusal.TooFewSets"/> below 3 sets, <see cref="Refusal.TooManyObservations"/> above 300 sessions of one among several athletes, <see cref="Refusal.MixedProtocols"/>, or what the mixed model
    /// refuses.</returns>
    /// <exception cref="ArgumentException">b is not a set before the last.</exception>
    public static Answer<ProfileModelResult> Fit(IReadOnlyList<Session> sessions, ProfileModelOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return SessionSelection.Of(sessions, options.Selection).Match(selection => Of(selection, options), refusal => refusal);
    }

    private static Answer<ProfileModelResult> Of(SessionSelection selection, ProfileModelOptions options)
    {
        var m = selection.Sessions.Count;
        if (m < NeededSessions) return new NotEstimable(Measure, Refusal.TooFewSessions, NeededSessions, m, "eligible sessions");
        var n = selection.Sessions[0].Protocol.Sets;
        if (n < 3) return new NotEstimable(Measure, Refusal.TooFewSets, 3, n, "sets");
        if (options.AfterSet >= n) throw new ArgumentException($"Set {options.AfterSet} is not one before the last of {n} sets.", nameof(options));
        var own = selection.Sessions.GroupBy(session => session.AthleteId, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal).ToList();
        var most = own.Max(group => group.Count());
        if (own.Count > 1 && most > MostSessionsOfOne) return NotEstimable.TooMany(Measure, MostSessionsOfOne, most, "eligible sessions of one athlete");
        var enough = own.Count(group => group.Count() >= NeededSessions);
        return MixedModel.Fit(Design([.. own.SelectMany(group => group)], own.Count > 1, enough >= NeededAthletes, options.AfterSet), new MixedModelOptions { ConfidenceLevel = options.Level, DegreesOfFreedom = options.DegreesOfFreedom })
            .Select(fit => Result(fit, own, n, enough, selection, options));
    }

    private static MixedDesign Design(IReadOnlyList<Session> sessions, bool several, bool withLate, int after)
    {
        var rows = sessions.SelectMany(session => session.TimesSeconds.Select((time, index) => (Session: session, Set: index + 1, Log: Math.Log(time)))).ToList();
        var n = sessions[0].Protocol.Sets;
        string[] athletes = [.. rows.Select(row => row.Session.AthleteId)];
        var one = DesignColumn.Intercept(rows.Count, Unit.LogSeconds);
        var late = new DesignColumn(Late, [.. rows.Select(row => row.Set > after ? 1.0 : 0)], Unit.LogSeconds);
        RandomTerm[] terms = several ? [new RandomTerm(Athlete, athletes, withLate ? [one, late] : [one], correlated: false)] : [];
        return new MixedDesign(
            new DesignColumn("ln t", [.. rows.Select(row => row.Log)], Unit.LogSeconds),
            [one, .. Enumerable.Range(2, n - 1).Select(set => new DesignColumn(FormattableString.Invariant($"set {set}"), [.. rows.Select(row => row.Set == set ? 1.0 : 0)], Unit.LogSeconds))],
            [.. terms, RandomTerm.Intercept("session", [.. rows.Select(row => row.Session.Id)])]);
    }

    private static ProfileModelResult Result(MixedFit fit, IReadOnlyList<IGrouping<string, Session>> own, int n, int enough, SessionSelection selection, ProfileModelOptions options)
    {
        // Weights of the set means are weights of the set effects, because they sum to 0 and the first set is the reference.
        Estimate Contrast(string name, double[] weights) => InPercent(fit.Contrast(name, [0, .. weights[1..]], Unit.LogSeconds), options.Level);
        VarianceComponent? Component(string term, string column) => fit.VarianceComponents.FirstOrDefault(component => component.Term == term && component.Column == column);
        var spread = Component(Athlete, Late);
        var none = enough < NeededAthletes
            ? new NotEstimable("how athletes' late effects differ", Refusal.TooFewAthletes, NeededAthletes, enough, $"athletes with {NeededSessions} eligible sessions")
            : new NotEstimable("how athletes' late effects differ", Refusal.BoundarySolution, "late effects that differ by more than the set noise", "late effects without variance");
        var late = Contrast(Contrasts.LateWords(n, options.AfterSet), Contrasts.Late(n, options.AfterSet)).WithNotes([.. Notes(fit, own.Count, enough, spread is not null, selection)]);
        return new ProfileModelResult
        {
            AfterSet = options.AfterSet,
            SetsAgainstFirst = [.. fit.FixedEffects.Skip(1).Select(effect => InPercent(effect.Estimate, options.Level))],
            LateContrast = late,
            KinkContrast = Contrast("late contrast beyond a straight line", Contrasts.Kink(n, options.AfterSet)),
            LateSpread = spread is null ? none : Deviation(spread.StandardDeviation),
            AthleteSpread = Component(Athlete, RegressionDesign.Intercept) is { } levels ? Deviation(levels.StandardDeviation) : new NotEstimable("how athletes' levels differ", Refusal.TooFewAthletes, 2, 1, "athletes"),
            SessionSpread = Deviation(Component("session", RegressionDesign.Intercept)!.StandardDeviation),
            SetNoise = Deviation(fit.ResidualStandardDeviation),
            Athletes = AthletesOf(fit, own, n, options.AfterSet, spread is null ? none : null, options.Level),
            Model = fit,
            Selection = selection,
        };
    }

    private static AthleteLateEffect[] AthletesOf(MixedFit fit, IReadOnlyList<IGrouping<string, Session>> own, int n, int after, NotEstimable? none, ConfidenceLevel level)
    {
        if (none is not null) return [.. own.Select(group => new AthleteLateEffect(group.Key, group.Count(), none, none))];
        var effects = fit.RandomEffects.Where(effect => effect.Column == Late).ToDictionary(effect => effect.Group, StringComparer.Ordinal);
        var weights = Contrasts.Late(n, after);
        double[][] contrasts = [.. own.Select(group => group.Select(session => Contrasts.Apply(weights, [.. session.TimesSeconds.Select(time => Math.Log(time))])).ToArray())];
        // Levels of athletes and sessions fall out of a contrast: one noise for all, from the scatter of every athlete's sessions.
        var df = contrasts.Sum(one => one.Length - 1);
        var noise = Math.Sqrt(contrasts.Sum(one => one.Sum(contrast => Math.Pow(contrast - Descriptive.Mean(one), 2))) / df);
        var hierarchy = new NormalHierarchy([.. contrasts.Select(one => Descriptive.Mean(one))], [.. contrasts.Select(one => noise / Math.Sqrt(one.Length))], df);
        return [.. own.Select((group, i) => new AthleteLateEffect(group.Key, group.Count(), Deviation(effects[group.Key], group.Count()), Whole(i, group.Count())))];

        Estimate Deviation(RandomEffect effect, int sessions) =>
            new(Percent.FromLog(effect.Deviation).Value, Unit.Percent, sessions, "best linear unbiased prediction, conditional SD") { StandardError = 100 * Math.Exp(effect.Deviation) * effect.ConditionalStandardDeviation };

        Estimate Whole(int index, int sessions)
        {
            var contrast = hierarchy.Of(index);
            var limits = contrast.Limits(level);
            return new Estimate(Percent.FromLog(contrast.Mean).Value, Unit.Percent, sessions, "own late contrast, pulled toward the squad; mean and spread of the squad unknown")
            {
                StandardError = 100 * Math.Exp(contrast.Mean) * contrast.Deviation,
                Interval = new Interval(Percent.FromLog(limits.Lower).Value, Percent.FromLog(limits.Upper).Value, level),
            };
        }
    }

    private static Estimate InPercent(Estimate log, ConfidenceLevel level) =>
        TInterval.Of(log.Value, log.StandardError!.Value, log.DegreesOfFreedom ?? double.PositiveInfinity, Unit.Percent, level, log.Observations, log.Method);

    private static Estimate Deviation(Estimate log) => new(Percent.FromLog(log.Value).Value, Unit.Percent, log.Observations, $"{log.Method}, back-transformed");

    private static IEnumerable<string> Notes(MixedFit fit, int athletes, int enough, bool withLate, SessionSelection selection)
    {
        if (athletes > 1 && enough < NeededAthletes) yield return $"Athletes' own late effects were not asked for: only {enough} athletes have {NeededSessions} sessions or more, {NeededAthletes} are needed.";
        if (athletes > 1 && !withLate) yield return "All athletes are taken to slow alike: the interval is too narrow if they do not.";
        foreach (var note in fit.Notes) yield return note;
        yield return "Sets of a session are taken as equally correlated.";
        foreach (var note in selection.Notes) yield return note;
    }
}
