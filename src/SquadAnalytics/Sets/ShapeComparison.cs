using System.Globalization;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Which shape describes an athlete's profiles over several sessions.</summary>
public static class ShapeComparison
{
    private const int Needed = 4;
    private const int SpareNeeded = 5;

    /// <summary>Compares the candidate shapes over the sessions of one athlete.</summary>
    /// <remarks>
    /// On y = ln t with every session's level removed exactly (N = m (n - 1) values of m sessions of n sets; RSS what a shape leaves of them; no unit): AICc = N ln(RSS / N) + 2 p + 2 p (p + 1) / (N - p - 1),
    /// p = parameters of the shape without the level, one more where b was searched for, one more for σ (Hurvich and Tsai 1989, Biometrika
    /// 76:297-307). Less than 2 behind: indistinguishable; more than 6: set aside. It ranks the listed shapes only, is no test, and assumes
    /// independent noise within a session.
    /// </remarks>
    /// <returns>The ranking, or <see cref="Refusal.TooFewSessions"/> below 4 sessions, <see cref="Refusal.TooFewSets"/> below 3 sets,
    /// <see cref="Refusal.ZeroVariance"/>, <see cref="Refusal.MixedProtocols"/>. Shapes that leave N - p - 1 below 5 are not listed.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes.</exception>
    public static Answer<ShapeComparisonResult> Fit(IReadOnlyList<Session> sessions, ShapeComparisonOptions? options = null)
    {
        options ??= new ShapeComparisonOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match(Of, refusal => refusal);
    }

    private static Answer<ShapeComparisonResult> Of(SessionSelection selection)
    {
        var m = selection.Sessions.Count;
        if (m < Needed) return new NotEstimable("the comparison of shapes", Refusal.TooFewSessions, Needed, m, "eligible sessions");
        var n = selection.Sessions[0].Protocol.Sets;
        if (n < 3) return new NotEstimable("the comparison of shapes", Refusal.TooFewSets, 3, n, "sets");
        var centred = Profiles.CentredBySession([.. selection.Sessions.Select(session => Internals.LogScale.Of(session.TimesSeconds))]);
        var mean = Profiles.MeanProfile(centred);
        var free = Profiles.FreeResidual(centred);
        if (!(free > 1e-20)) return new NotEstimable("the comparison of shapes", Refusal.ZeroVariance, "sessions that differ in profile", string.Create(CultureInfo.InvariantCulture, $"{m} sessions with the same profile"));
        var total = m * (n - 1);
        var spaces = ShapeSpace.Candidates(n, withJumps: true).Where(space => total - (space.Parameters + 1) - 1 >= SpareNeeded).ToList();
        double Criterion(ShapeSpace space)
        {
            // What a shape leaves: scatter about the mean profile, and the part of the mean profile that it does not reach.
            var residual = free + m * space.Residual(mean);
            return InformationCriteria.Aicc(total, residual, space.Parameters + 1)!.Value;
        }

        var fits = ShapeFit.Ranked([.. spaces.Select(space => space.Shape)], [.. spaces.Select(Criterion)], total, "AICc over session-centred profiles");
        var best = spaces.Find(space => space.Shape == fits[0].Shape)!;
        double[] common = [.. mean.Zip(best.Remainder(mean), (value, rest) => value - rest)];
        return new ShapeComparisonResult
        {
            Shapes = fits,
            ResidualAutocorrelation = new Estimate(Autocorrelation([.. centred.Select(row => row.Zip(common, (value, shape) => value - shape).ToArray())]), Unit.None, total, "lag-1, within sessions"),
            Selection = selection,
            Notes = ["Ranks the listed shapes only; it is no test and assumes independent noise within a session.", .. selection.Notes],
        };
    }

    private static double Autocorrelation(double[][] residuals) =>
        residuals.Sum(row => row.Zip(row.Skip(1), (earlier, later) => earlier * later).Sum()) / residuals.Sum(row => row.Sum(value => value * value));
}
