using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>What an athlete chosen for an extreme baseline would change by anyway.</summary>
public static class RegressionToTheMean
{
    private const int Needed = 8;

    /// <summary>The change to expect without any true change: -(1 - ρ)(y1 - μ).</summary>
    /// <remarks>y1 - μ is the distance of the baseline from the squad's mean; in seconds, negative = faster. Source: Barnett, van der Pols and Dobson 2005, Int J Epidemiol 34:215-220.
    /// Assumes normal levels and noise.</remarks>
    /// <param name="reliability">ρ, the intraclass correlation ICC(C,1), from 0 to 1.</param>
    /// <param name="distance">How far the baseline lies from the squad's mean of that day; positive = slower.</param>
    /// <exception cref="ArgumentOutOfRangeException">The reliability is not between 0 and 1.</exception>
    public static Seconds Expected(Estimate reliability, Seconds distance)
    {
        ArgumentNullException.ThrowIfNull(reliability);
        if (reliability.Value is < 0 or > 1) throw new ArgumentOutOfRangeException(nameof(reliability), reliability.Value, "A reliability lies between 0 and 1.");
        return -(1 - reliability.Value) * distance;
    }

    /// <summary>Adjusts the changes of all athletes who took both of two tests.</summary>
    /// <remarks>D* = D - mean D + (1 - ρ)(y1 - μ), in seconds, D later minus earlier, y1 the first test, ρ = ICC(C,1), because the mean change is taken out separately, and μ the squad's mean of the first test.
    /// Assumes one straight relation with slope ρ in the whole squad, and that the athletes were looked at because of their baseline. Source: Barnett et al.
    /// 2005, Int J Epidemiol 34:215-220.</remarks>
    /// <param name="baseline">Complete sessions of the earlier test, one per athlete.</param>
    /// <param name="later">Complete sessions of the later test, one per athlete.</param>
    /// <param name="reliability">The squad's intraclass correlations.</param>
    /// <returns>One row per athlete with both tests, or <see cref="Refusal.TooFewAthletes"/> below 8.</returns>
    /// <exception cref="ArgumentException">A session is incomplete.</exception>
    public static Answer<IReadOnlyList<RegressionToTheMeanRow>> Fit(IReadOnlyList<Session> baseline, IReadOnlyList<Session> later, IntraclassCorrelationResult reliability)
    {
        ArgumentNullException.ThrowIfNull(baseline);
        ArgumentNullException.ThrowIfNull(later);
        ArgumentNullException.ThrowIfNull(reliability);
        if (baseline.Concat(later).Any(session => !session.IsComplete)) throw new ArgumentException("Every session must be complete.", nameof(baseline));
        var pairs = baseline.Join(later, session => session.AthleteId, session => session.AthleteId,
            (first, second) => (Athlete: first.AthleteId, First: SessionMeasures.Of(first, SessionMeasure.Total), Second: SessionMeasures.Of(second, SessionMeasure.Total))).OrderBy(pair => pair.Athlete, StringComparer.Ordinal).ToList();
        if (pairs.Count < Needed) return new NotEstimable("regression to the mean", Refusal.TooFewAthletes, Needed, pairs.Count, "athletes with both tests");
        var centre = Descriptive.Mean([.. pairs.Select(pair => pair.First)]);
        var meanChange = Descriptive.Mean([.. pairs.Select(pair => pair.Second - pair.First)]);
        Estimate In(double seconds, string method) => new(seconds, Unit.Seconds, pairs.Count, method);
        return new Answer<IReadOnlyList<RegressionToTheMeanRow>>([.. pairs.Select(pair =>
        {
            var expected = Expected(reliability.Consistency, new Seconds(pair.First - centre)).Value;
            var observed = pair.Second - pair.First;
            return new RegressionToTheMeanRow(pair.Athlete, In(observed, "later minus earlier"), In(expected, "-(1 - ICC(C,1)) (baseline - squad mean)"), In(observed - meanChange - expected, "observed - squad mean change - expected"));
        })]);
    }
}
