using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>The testable form of "slows after set b": contrasts within each session, tested over sessions.</summary>
public static class LateSlowdown
{
    private const int NamedNeeds = 4;
    private const int SearchedNeeds = 5;
    private const string FoundByLooking = "The set was found by looking: interval and p-value count the search.";
    private const string Exchangeable = "Assumes no learning of pacing from session to session: look at the contrasts by date.";

    /// <summary>Tests over several sessions of one athlete whether the sets after b are slower, and more abruptly so than a steady drift.</summary>
    /// <remarks>
    /// Per session, with y the set times or their logarithms: late contrast c = mean(y_k, k > b) - mean(y_k, k &lt;= b) of the n sets, in seconds or percent; kink contrast
    /// κ = c - (n/2) β̂, β̂ the session's least-squares slope. The m values are the data of a one-sample t (m - 1 degrees of freedom),
    /// valid under any correlation within sessions. Both c > 0 and κ > 0 are needed for "after set b".
    /// Where b is searched for, it is the one whose κ is largest in units of its standard error under equal set noise, which is the step that
    /// fits best beside a steady drift; the p-values compare both contrasts with the largest over b when the signs of whole session-centred
    /// profiles are flipped (all 2^m up to 12 sessions, otherwise 9 999 random flips), so that the search is paid for; the intervals hold for all
    /// n - 1 sets together (max-t: the largest |t| over b of independent, equally noisy sets).
    /// Sources: Matthews et al. 1990, BMJ 300:230-235 (summary measures); Hothorn, Bretz and Westfall 2008, Biometrical Journal 50:346-363 (from memory; intervals after a search).
    /// Assumes sessions that are exchangeable and contrasts that are normal over sessions, or symmetric for the sign flips.
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="options">b, scale, level, selection, seed; null for the defaults.</param>
    /// <returns>The contrasts, or <see cref="Refusal.TooFewSessions"/> (4 with b named, 5 searched), <see cref="Refusal.TooFewSets"/> (3),
    /// <see cref="Refusal.ZeroVariance"/>, <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes, or b is not a set before the last.</exception>
    public static Answer<LateSlowdownResult> Fit(IReadOnlyList<Session> sessions, LateSlowdownOptions? options = null)
    {
        options ??= new LateSlowdownOptions();
        var selected = SessionSelection.OfOneAthlete(sessions, options.Selection);
        if (!selected.TryGet(out var selection)) return selected.Refusal!;
        var needed = options.AfterSet is null ? SearchedNeeds : NamedNeeds;
        var m = selection.Sessions.Count;
        if (m < needed) return new NotEstimable("the late slow-down", Refusal.TooFewSessions, needed, m, "eligible sessions");
        var n = selection.Sessions[0].Protocol.Sets;
        if (n < 3) return new NotEstimable("the late slow-down", Refusal.TooFewSets, 3, n, "sets");
        if (options.AfterSet is { } named) CheckSet(named, n, nameof(options));
        var profiles = selection.Sessions.Select(session => LogScale.Of(session, options.Scale)).ToArray();
        return options.AfterSet is { } after ? Test(selection, profiles, after, options) : Searched(selection, profiles, options);
    }

    /// <summary>The contrasts of a single session, with the set noise borrowed from the athlete's other sessions.</summary>
    /// <remarks>On logarithms: SE(c) = σ √(1/b + 1/(n - b)), SE(κ) = σ √Σ w², c and κ the contrasts of <see cref="Fit"/>, w the weights of κ, σ the set noise, n sets; t quantile with the degrees of freedom of σ.
    /// Assumes independent normal noise of sets with the same size as in the other sessions. Source: algebra.</remarks>
    /// <param name="session">The session.</param>
    /// <param name="noise">The set noise, from sessions other than this one.</param>
    /// <param name="afterSet">The set b, named in advance.</param>
    /// <param name="level">Level of the intervals.</param>
    /// <returns>Both contrasts in percent, or <see cref="Refusal.IncompleteSession"/>, or <see cref="Refusal.TooFewSets"/> below 3 sets.</returns>
    /// <exception cref="ArgumentException">The noise is of another number of sets, or b is not a set before the last.</exception>
    public static Answer<SessionContrast> Summarize(Session session, SetNoiseResult noise, int afterSet, ConfidenceLevel level = default)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(noise);
        var n = session.Protocol.Sets;
        CheckSet(afterSet, n, nameof(afterSet));
        if (noise.Sets != n) throw new ArgumentException($"The set noise is of {noise.Sets} sets, but the session has {n}.", nameof(noise));
        if (!session.IsComplete) return new NotEstimable("the late slow-down", Refusal.IncompleteSession, n, session.TimesSeconds.Count, "timed sets");
        if (n < 3) return new NotEstimable("the late slow-down", Refusal.TooFewSets, 3, n, "sets");
        var profile = LogScale.Of(session.TimesSeconds);
        string[] notes = noise.Selection.Sessions.Any(other => other.Id == session.Id) ? ["The set noise was estimated with this session among the others."] : [];
        Estimate Of(double[] weights, string method) => TInterval.Of(
            Contrasts.Apply(weights, profile), noise.LogNoise.Value * Math.Sqrt(weights.Sum(weight => weight * weight)), noise.DegreesOfFreedom, Unit.Percent, level, n, method).WithNotes(notes);

        return new SessionContrast(session.Id, session.Date,
            Of(Contrasts.Late(n, afterSet), $"{Contrasts.LateWords(n, afterSet)} of ln t, set noise of other sessions"),
            Of(Contrasts.Kink(n, afterSet), "late contrast beyond a straight line, set noise of other sessions"));
    }

    private static Answer<LateSlowdownResult> Searched(SessionSelection selection, double[][] profiles, LateSlowdownOptions options)
    {
        var n = profiles[0].Length;
        double[][] late = [.. Contrasts.Every(n, Contrasts.Late).Select(weights => PerSession(profiles, Contrasts.UnitLength(weights)))];
        double[][] kink = [.. Contrasts.Every(n, Contrasts.Kink).Select(weights => PerSession(profiles, Contrasts.UnitLength(weights)))];
        var found = Enumerable.Range(1, n - 1).MaxBy(b => kink[b - 1].Sum());
        return Test(selection, profiles, found, options, isPicked: true).Select(result => result with
        {
            Choice = BreakChoice.FoundBySearch,
            LateContrast = result.LateContrast.WithNotes(FoundByLooking),
            KinkContrast = result.KinkContrast.WithNotes(FoundByLooking),
            LatePValue = Flipped(late, found, options.Seed),
            KinkPValue = Flipped(kink, found, options.Seed),
        });
    }

    private static Answer<LateSlowdownResult> Test(SessionSelection selection, double[][] profiles, int after, LateSlowdownOptions options, bool isPicked = false)
    {
        var n = profiles[0].Length;
        var late = PerSession(profiles, Contrasts.Late(n, after));
        var kink = PerSession(profiles, Contrasts.Kink(n, after));
        if (Constant(late) || Constant(kink))
            return new NotEstimable("the late slow-down", Refusal.ZeroVariance, "sessions that differ", $"{late.Length} sessions with the same contrast");
        var unit = options.Scale == Scale.Log ? Unit.Percent : Unit.Seconds;
        string[] notes = [Exchangeable, .. selection.Notes];
        double Choices(Func<int, int, double[]> weights) => isPicked ? EffectiveChoices.Of(Contrasts.Every(n, weights), profiles.Length, options.Level) : 1;
        var lateContrast = TInterval.OfMean(late, unit, options.Level, $"one-sample t over sessions of {Contrasts.LateWords(n, after)}", choices: Choices(Contrasts.Late)).WithNotes(notes);
        var kinkContrast = TInterval.OfMean(kink, unit, options.Level, "one-sample t over sessions of the late contrast beyond a straight line", choices: Choices(Contrasts.Kink)).WithNotes(notes);
        Estimate Single(double value, string method) => new(unit == Unit.Percent ? Percent.FromLog(value).Value : value, unit, n, method);
        return new LateSlowdownResult
        {
            AfterSet = after,
            Choice = BreakChoice.NamedInAdvance,
            Scale = options.Scale,
            LateContrast = lateContrast,
            KinkContrast = kinkContrast,
            LatePValue = OneSided(lateContrast),
            KinkPValue = OneSided(kinkContrast),
            Sessions = [.. selection.Sessions.Select((session, s) => new SessionContrast(session.Id, session.Date, Single(late[s], "late contrast"), Single(kink[s], "kink contrast")))],
            Selection = selection,
        };
    }

    private static double[] PerSession(double[][] profiles, double[] weights) => [.. profiles.Select(profile => Contrasts.Apply(weights, profile))];

    private static Estimate OneSided(Estimate contrast)
    {
        // The two-sided p of a t test, halved on the side of "slower".
        var half = contrast.PValue!.Value / 2;
        return new Estimate(contrast.Value > 0 ? half : 1 - half, Unit.Probability, contrast.Observations, "one-sided t test of slower") { DegreesOfFreedom = contrast.DegreesOfFreedom };
    }

    private static Estimate Flipped(double[][] values, int found, int seed)
    {
        var m = values[0].Length;
        return new Estimate(Contrasts.SignFlipPValue(values, found - 1, seed), Unit.Probability, m,
            m <= 12 ? "sign flips of whole profiles, all of them, largest contrast over b" : string.Create(CultureInfo.InvariantCulture, $"9999 random sign flips of whole profiles (seed {seed}), largest contrast over b"));
    }

    private static bool Constant(double[] values) => values.Max() - values.Min() <= 1e-12 * Math.Max(1, Math.Abs(values[0]));

    internal static void CheckSet(int after, int sets, string parameter)
    {
        if (after < 1 || after >= sets)
            throw new ArgumentOutOfRangeException(parameter, after, string.Create(CultureInfo.InvariantCulture, $"The set after which an athlete slows must be from 1 to {sets - 1}, a set before the last of {sets}."));
    }
}
