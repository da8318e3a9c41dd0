using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Standing;

/// <summary>Which band an athlete is in, when a total near an edge may be noise.</summary>
public static class ProbableBand
{
    private const string Faster = "faster than the banded range";
    private const string Slower = "slower than the banded range";

    /// <summary>The band of an athlete's latest test.</summary>
    /// <remarks>
    /// P(band) = T_df((high - m) / s) - T_df((low - m) / s), low and high the edges of the band, m the total and s the typical error in seconds, T_df the t distribution with the degrees of freedom of s. A band change is announced only where the
    /// new band has the needed probability or two tests in a row fall in it; otherwise the athlete is on the line. Bands are half-open: a
    /// total exactly on an edge belongs to the slower one; outside the banded range nothing is clipped.
    /// Assumes normal noise and no knowledge beyond the total (a flat prior). Source: t distribution about one test, textbook; the rule of announcing is
    /// common practice, no source.
    /// </remarks>
    /// <param name="sessions">Sessions of one athlete with one protocol, in any order.</param>
    /// <param name="typicalError">The noise of one session total, in seconds.</param>
    /// <param name="options">The needed probability; null for the default.</param>
    /// <param name="selection">Which sessions to use; null for the defaults.</param>
    /// <returns>The band, or <see cref="Refusal.TooFewSessions"/> without an eligible session, <see cref="Refusal.BandsMissing"/> where no bands apply
    /// on the date, <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes, or the error is not in seconds.</exception>
    public static Answer<ProbableBandResult> Fit(IReadOnlyList<Session> sessions, TypicalErrorResult typicalError, ProbableBandOptions? options = null, SelectionOptions? selection = null)
    {
        ArgumentNullException.ThrowIfNull(typicalError);
        if (typicalError.Estimate.Unit != Unit.Seconds) throw new ArgumentException("The typical error must be in seconds.", nameof(typicalError));
        return SessionSelection.OfOneAthlete(sessions, selection).Match(selected => Of(selected.Sessions, typicalError, options ?? new ProbableBandOptions()), refusal => refusal);
    }

    private static Answer<ProbableBandResult> Of(IReadOnlyList<Session> sessions, TypicalErrorResult typicalError, ProbableBandOptions options)
    {
        if (sessions.Count == 0) return new NotEstimable("the band", Refusal.TooFewSessions, 1, 0, "eligible sessions");
        var latest = sessions[^1];
        var bands = latest.Protocol.BandsOn(latest.Date);
        if (bands.Count == 0) return new NotEstimable("the band", Refusal.BandsMissing, "bands of the protocol on the test date", "none");
        var total = latest.Total.GetOrThrow();
        var chances = Chances(total.Value, bands, typicalError);
        var observed = NameOf(total, bands);
        Seconds[] totals = [.. sessions.Select(session => session.Total.GetOrThrow())];
        var (standing, before, announced) = Settle(totals, bands, typicalError, options.NeededProbability);
        return new ProbableBandResult
        {
            Total = new Estimate(total.Value, Unit.Seconds, 1, "session total, typical error as standard error") { StandardError = typicalError.Estimate.Value, DegreesOfFreedom = typicalError.DegreesOfFreedom },
            Observed = observed,
            Announced = announced,
            Before = before,
            InARow = totals.Reverse().TakeWhile(earlier => NameOf(earlier, bands) == observed).Count(),
            Standing = standing,
            Chances = chances,
        };
    }

    /// <summary>Walks through the tests: the band held changes where a test is in another one, probably enough or for the second time in a row.</summary>
    private static (BandStanding Standing, string? Before, string? Announced) Settle(IReadOnlyList<Seconds> totals, IReadOnlyList<PerformanceBand> bands, TypicalErrorResult typicalError, double needed)
    {
        bool IsProbable(Seconds total) => Chances(total.Value, bands, typicalError).Single(chance => chance.Name == NameOf(total, bands)).Chance.Value >= needed;
        var held = NameOf(totals[0], bands);
        if (totals.Count == 1) return (BandStanding.First, null, IsProbable(totals[0]) ? held : null);
        var (standing, before) = (BandStanding.Unchanged, held);
        for (var test = 1; test < totals.Count; test++)
        {
            var name = NameOf(totals[test], bands);
            before = held;
            var isNew = name != held;
            standing = !isNew ? BandStanding.Unchanged : IsProbable(totals[test]) || NameOf(totals[test - 1], bands) == name ? BandStanding.Changed : BandStanding.OnTheLine;
            if (standing == BandStanding.Changed) held = name;
        }

        return (standing, before, held);
    }

    private static IReadOnlyList<BandChance> Chances(double total, IReadOnlyList<PerformanceBand> bands, TypicalErrorResult typicalError)
    {
        var df = typicalError.DegreesOfFreedom;
        double Below(Seconds edge) => StudentTDistribution.Cdf((edge.Value - total) / typicalError.Estimate.Value, df);
        Estimate Chance(double probability) => new(Math.Clamp(probability, 0, 1), Unit.Probability, 1, "t distribution about the total") { DegreesOfFreedom = df };
        return
        [
            new BandChance(null, Faster, Chance(Below(bands[0].Low))),
            .. bands.Select(band => new BandChance(band, band.Name, Chance(Below(band.High) - Below(band.Low)))),
            new BandChance(null, Slower, Chance(1 - Below(bands[^1].High))),
        ];
    }

    private static string NameOf(Seconds total, IReadOnlyList<PerformanceBand> bands) =>
        bands.FirstOrDefault(band => band.Contains(total))?.Name ?? (total < bands[0].Low ? Faster : Slower);
}
