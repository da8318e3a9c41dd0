using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Sets;

/// <summary>The shape of a single session, with the set noise borrowed from other sessions: the only defensible reading of so few sets.</summary>
public static class PacingShape
{
    /// <summary>How far a shape must lie ahead to be named.</summary>
    internal const double Margin = 6;
    private const double OwnNeeds = 10;
    private const double WantedDegrees = 20;

    /// <summary>Compares the candidate shapes on one session.</summary>
    /// <remarks>
    /// C = RSS / σ² + 2 q on y = ln t, RSS the residual sum of squares of a shape and σ the set noise, taken as known; q counts the parameters of the mean, the level included and one more where the set b
    /// was searched for (Mallows 1973, Technometrics 15:661-675, from memory). "Not even" is said only where even lies more than 6 behind the best: false alarms
    /// of 1.1 % with σ known, 2.6 % with 20 and 4.6 % with 10 degrees of freedom (simulation). A shape is named only where it beats every
    /// other by more than 6. The small-sample criterion on the session alone cannot tell: with 5 sets and one parameter it asks for 98 %
    /// of the variance (Hurvich and Tsai 1989, Biometrika 76:297-307).
    /// Assumes independent normal noise of sets with the same size as in the other sessions.
    /// </remarks>
    /// <param name="session">The session.</param>
    /// <param name="own">Set noise of the same athlete's other sessions; used with 10 or more degrees of freedom; null where there is none.</param>
    /// <param name="squad">Set noises of the squad's athletes, pooled where the own one is too thin and they have 20 degrees of freedom together.</param>
    /// <returns>The comparison, or <see cref="Refusal.TooFewSets"/> without any set noise or below 4 sets, <see cref="Refusal.TooFewSessions"/>
    /// where the noise has too few degrees of freedom, <see cref="Refusal.IncompleteSession"/>.</returns>
    /// <exception cref="ArgumentException">A set noise is of another number of sets.</exception>
    public static Answer<PacingShapeResult> Summarize(Session session, SetNoiseResult? own, IReadOnlyList<SetNoiseResult>? squad = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        var n = session.Protocol.Sets;
        if (!session.IsComplete) return new NotEstimable("the pacing shape", Refusal.IncompleteSession, n, session.TimesSeconds.Count, "timed sets");
        if (n < 4) return new NotEstimable("the pacing shape", Refusal.TooFewSets, 4, n, "sets");
        if (own is null && squad is not { Count: > 0 })
            return new NotEstimable("the pacing shape", Refusal.TooFewSets, "the set noise of other sessions", string.Create(CultureInfo.InvariantCulture, $"{n} sets alone"));
        if ((own is null ? squad! : [own, .. squad ?? []]).Any(noise => noise.Sets != n)) throw new ArgumentException($"Every set noise must be of {n} sets, as the session is.", nameof(own));
        if (own is not null && own.DegreesOfFreedom >= OwnNeeds) return Of(session, own, own.DegreesOfFreedom < WantedDegrees ? [Few(own)] : []);
        if (squad is not { Count: > 0 } || squad.Sum(noise => noise.DegreesOfFreedom) < WantedDegrees)
        {
            return new NotEstimable("the pacing shape", Refusal.TooFewSessions, "10 degrees of freedom of the athlete's set noise, or 20 of the squad's",
                string.Create(CultureInfo.InvariantCulture, $"{own?.DegreesOfFreedom ?? 0} and {squad?.Sum(noise => noise.DegreesOfFreedom) ?? 0}"));
        }

        return Of(session, SetNoise.Pool(squad), ["Set noise pooled over the squad: this athlete's own may differ."]);
    }

    private static PacingShapeResult Of(Session session, SetNoiseResult noise, IReadOnlyList<string> notes)
    {
        var sigma = noise.LogNoise.Value;
        var centred = Profiles.CentredBySession([LogScale.Of(session.TimesSeconds)])[0];
        var spaces = ShapeSpace.Candidates(centred.Length, withJumps: false);
        var fits = ShapeFit.Ranked([.. spaces.Select(space => space.Shape)], [.. spaces.Select(space => space.Residual(centred) / (sigma * sigma) + 2 * (space.Parameters + 1))], centred.Length, "RSS / σ² + 2 parameters");
        return new PacingShapeResult
        {
            Session = session,
            Shapes = fits,
            IsNotEven = fits.First(fit => fit.Shape.Kind == ShapeKind.Even).Behind.Value > Margin,
            Shape = fits[1].Behind.Value > Margin ? fits[0].Shape : null,
            Noise = noise,
            Notes = notes,
        };
    }

    private static string Few(SetNoiseResult noise) => string.Create(CultureInfo.InvariantCulture, $"The set noise has {noise.DegreesOfFreedom} degrees of freedom; below 20 false alarms are more frequent.");
}
