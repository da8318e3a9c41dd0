using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Sets;

/// <summary>One number for the slowing within a session, in four published forms, with the noise floor that each must be read against.</summary>
public static class FatigueIndices
{
    private const string TwoSets = "Rests on two of the sets only: a spurt in the last set or a slow first set distorts it.";
    private const string NotAlone = "The best reproduced of the indices and still poor: it describes, and is never a week-to-week verdict on its own. Read it beside the total.";

    /// <summary>Describes the slowing of one session.</summary>
    /// <remarks>
    /// With work times t_1..t_n, best = min, worst = max, W = Σ t: extremes 100 (worst - best) / best; first to last
    /// 100 (t_n - t_1) / t_1; ratio t_n / t_1; percentage decrement 100 (W / (n best) - 1). Under perfectly even pacing with set noise of
    /// CV σ the decrement is expected near e_n σ and the extremes near 2 e_n σ, e_n the expected size of the smallest of n standard
    /// normals (1.163 for 5), not 0: <see cref="NoiseFloor"/>.
    /// Sources: Fitzsimons et al. 1993, Aust J Sci Med Sport 25:82-87; Glaister et al. 2004, J Strength Cond Res 18:459-462, and 2008,
    /// 22:1597-1601; Oliver 2009, J Sci Med Sport 12:20-23; Girard et al. 2011, Sports Med 41:673-694.
    /// Assumes nothing of the profile; noise alone gives indices above 0, see the noise floor.
    /// </remarks>
    /// <returns>The indices, or <see cref="Refusal.IncompleteSession"/> where a set is missing, or <see cref="Refusal.TooFewSets"/> below 3 sets.</returns>
    /// <exception cref="ArgumentException">The noise floor is of another number of sets.</exception>
    public static Answer<FatigueIndicesResult> Summarize(Session session, FatigueOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        var sets = session.Protocol.Sets;
        var floor = options?.NoiseFloor;
        if (floor is not null && floor.Sets != sets)
            throw new ArgumentException($"The noise floor is of {floor.Sets} sets, but the session has {sets}.", nameof(options));
        if (!session.IsComplete) return new NotEstimable("the fatigue indices", Refusal.IncompleteSession, sets, session.TimesSeconds.Count, "timed sets");
        if (sets < 3) return new NotEstimable("the fatigue indices", Refusal.TooFewSets, 3, sets, "sets");
        double[] times = [.. session.TimesSeconds];
        var measures = SetMeasures.Of(times);
        var extreme = floor is null ? NoiseFloor.ExpectedExtreme(sets) : 0;
        Estimate Index(double value, Unit unit, string method, params IEnumerable<string> notes) => new(value, unit, sets, method) { Notes = [.. notes] };

        return new FatigueIndicesResult
        {
            Session = session,
            NoiseFloor = floor,
            Total = Index(measures.Total, Unit.Seconds, "sum of all sets"),
            Extremes = Index(100 * (measures.Worst / measures.Best - 1), Unit.Percent, "100 (worst - best) / best", Scatter(floor, 2 * extreme, floor?.ExtremesExpected, floor?.ExtremesLimit), TwoSets),
            FirstToLast = Index(100 * (measures.LastToFirst - 1), Unit.Percent, "100 (last - first) / first", Scatter(floor, 0, floor?.FirstToLastExpected, floor?.FirstToLastLimit), TwoSets),
            LastToFirstRatio = Index(measures.LastToFirst, Unit.None, "last / first", TwoSets),
            Decrement = Index(measures.Decrement, Unit.Percent, "100 (total / (n best) - 1)", Scatter(floor, extreme, floor?.DecrementExpected, floor?.DecrementLimit), NotAlone),
        };
    }

    private static string Scatter(NoiseFloor? floor, double even, Percent? expected, Percent? limit)
    {
        if (floor is not null)
        {
            return string.Create(CultureInfo.InvariantCulture,
                $"Even pacing with set noise {floor.SetNoise.Value:0.00} % would show {expected!.Value.Value:0.00} % on average and more than {limit!.Value.Value:0.00} % in 1 of 20 sessions.");
        }

        const string unknown = "no set noise was given to compare with.";
        return even == 0
            ? $"Even pacing would show 0 on average, with a scatter of about 1.4 times the set noise; {unknown}"
            : string.Create(CultureInfo.InvariantCulture, $"Even pacing would show about {even:0.00} times the set noise, not 0; {unknown}");
    }
}
