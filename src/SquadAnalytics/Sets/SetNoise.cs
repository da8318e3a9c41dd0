using SquadAnalytics.Internals;

namespace SquadAnalytics.Sets;

/// <summary>Set-to-set noise σ, pooled over an athlete's sessions.</summary>
public static class SetNoise
{
    /// <summary>Estimates the set noise of one athlete.</summary>
    /// <remarks>
    /// y_sk = a_s + h_k + e_sk with y = ln t, a session effect a and a free mean profile h, e noise; σ² = RSS / ((m - 1)(n - 1)) over m sessions of
    /// n sets. As a coefficient of variation 100 (exp(σ) - 1) percent. Limits from the chi-squared distribution. Assumes independent noise of the
    /// same size in every set and the same profile in every session; whatever a session's profile does differently counts as noise.
    /// Source: two-way least squares, textbook.
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete, in any order.</param>
    /// <param name="options">Selection and level; null for the defaults.</param>
    /// <returns>The noise, or <see cref="Refusal.TooFewSessions"/> below 3 eligible sessions, <see cref="Refusal.ZeroVariance"/> where
    /// nothing is left over, <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes.</exception>
    public static Answer<SetNoiseResult> Fit(IReadOnlyList<Session> sessions, SetNoiseOptions? options = null)
    {
        options ??= new SetNoiseOptions();
        var selected = SessionSelection.OfOneAthlete(sessions, options.Selection);
        if (!selected.TryGet(out var selection)) return selected.Refusal!;
        return Of(selection, options.Level);
    }

    /// <summary>Pools the set noises of several athletes, √(Σ RSS / Σ ν): for an athlete whose own is too thin.</summary>
    /// <remarks>RSS and ν the residual sum of squares and degrees of freedom of each; in percent. Assumes that all athletes have the same set noise. Source: pooled variance, textbook.</remarks>
    /// <param name="noises">Set noises of one protocol; 1 or more.</param>
    /// <param name="level">Level of the interval.</param>
    /// <exception cref="ArgumentException">There is none, or they are of different numbers of sets.</exception>
    public static SetNoiseResult Pool(IReadOnlyList<SetNoiseResult> noises, ConfidenceLevel level = default)
    {
        ArgumentNullException.ThrowIfNull(noises);
        if (noises.Count == 0) throw new ArgumentException("At least one set noise is needed.", nameof(noises));
        if (noises.Any(noise => noise.Sets != noises[0].Sets)) throw new ArgumentException("Set noises of different numbers of sets cannot be pooled.", nameof(noises));
        var df = noises.Sum(noise => noise.DegreesOfFreedom);
        var sigma = Math.Sqrt(noises.Sum(noise => noise.DegreesOfFreedom * noise.LogNoise.Value * noise.LogNoise.Value) / df);
        var observations = noises.Sum(noise => noise.LogNoise.Observations);
        return new SetNoiseResult
        {
            Noise = TInterval.OfStandardDeviation(sigma, df, Unit.Percent, level, observations, "pooled over athletes, back-transformed"),
            LogNoise = TInterval.OfStandardDeviation(sigma, df, Unit.LogSeconds, level, observations, "pooled over athletes"),
            Sets = noises[0].Sets,
            Selection = SessionSelection.Of([.. noises.SelectMany(noise => noise.Selection.Sessions)], SelectionOptions.KeepAll).GetOrThrow(),
        };
    }

    internal static Answer<SetNoiseResult> Of(SessionSelection selection, ConfidenceLevel level)
    {
        var m = selection.Sessions.Count;
        if (m < 3) return new NotEstimable("the set noise", Refusal.TooFewSessions, 3, m, "eligible sessions");
        var logProfiles = selection.Sessions.Select(session => LogScale.Of(session.TimesSeconds)).ToArray();
        var n = logProfiles[0].Length;
        var df = (m - 1) * (n - 1);
        var sigma = Math.Sqrt(Profiles.FreeResidual(logProfiles) / df);
        if (!(sigma > 1e-12)) return new NotEstimable("the set noise", Refusal.ZeroVariance, "sessions that differ in profile", $"{m} sessions with the same profile");
        const string method = "residual SD of ln t after session and set effects";
        return new SetNoiseResult
        {
            Noise = TInterval.OfStandardDeviation(sigma, df, Unit.Percent, level, m * n, method + ", back-transformed").WithNotes(selection.Notes),
            LogNoise = TInterval.OfStandardDeviation(sigma, df, Unit.LogSeconds, level, m * n, method).WithNotes(selection.Notes),
            Sets = n,
            Selection = selection,
        };
    }
}
