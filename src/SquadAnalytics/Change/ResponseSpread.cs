using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>Do athletes differ in how they respond, or is it the noise of the test?</summary>
public static class ResponseSpread
{
    /// <summary>Athletes of each group that are needed.</summary>
    private const int NeededPerGroup = 6;

    private const string Measure = "the SD of individual responses";

    /// <summary>With a comparison group: how much more the changes scatter in the trained group than in the comparison.</summary>
    /// <remarks>
    /// SD_IR = √(s² - s0²), s and s0 the SDs (n - 1) of the changes; where s0 is larger, -√|s² - s0²| is shown, which means: no evidence that athletes respond differently. Interval: signed
    /// roots of v ± z SE(v), SE(v) = √(2 (s⁴/(n - 1) + s0⁴/(n0 - 1))). Assumes the same noise in both groups. Individuals are not labelled: the scatter of single changes is mostly noise.
    /// Sources: Atkinson and Batterham 2015, Exp Physiol 100:577-588; Hopkins 2015, J Appl Physiol 118:1444-1446 (both from memory).
    /// </remarks>
    /// <param name="athletes">One row per athlete, of two groups.</param>
    /// <param name="comparison">The comparison group.</param>
    /// <param name="level">Level of the interval; 90 % by default.</param>
    /// <returns>The standard deviation, signed, or <see cref="Refusal.TooFewAthletes"/> below 6 per group.</returns>
    /// <exception cref="ArgumentException">There are not two groups, none is the comparison, or an athlete appears twice.</exception>
    public static Answer<ResponseSpreadResult> Fit(IReadOnlyList<BeforeAndAfter> athletes, string comparison, ConfidenceLevel level = default)
    {
        var (reference, compared) = BeforeAndAfter.Split(athletes, comparison);
        var fewest = Math.Min(reference.Count, compared.Count);
        if (fewest < NeededPerGroup) return new NotEstimable(Measure, Refusal.TooFewAthletes, NeededPerGroup, fewest, "athletes in each group");
        return IndividualResponses.Fit([.. reference.Select(row => row.ChangeSeconds)], [.. compared.Select(row => row.ChangeSeconds)], level).Select(responses => new ResponseSpreadResult
        {
            StandardDeviation = new Estimate(responses.StandardDeviation, Unit.Seconds, athletes.Count, $"SD of changes beyond that of {comparison}")
            {
                Interval = responses.Interval,
                Notes = [.. Notes(responses)],
            },
        });
    }

    /// <summary>Without a comparison group: the SD between athletes of the slope times the weeks of the season.</summary>
    /// <remarks>
    /// The SD is that of the season's mixed model, by REML. Limits: the SDs ω at which Q(ω) = Σ (b_i - b̄)² / (ω² + σ² / S_i) is (k - 1) times a quantile of F with k - 1 and ν degrees of freedom, b_i the athletes'
    /// least-squares slopes, b̄ their mean with the same weights, S_i = Σ (w - w̄)², σ² the pooled variance about the lines with ν degrees of freedom (Q-profile; Viechtbauer 2007, Stat Med 26:37-52, from memory,
    /// who takes σ² as known). Profile likelihood, the usual way, covers 87 % for 90 % with 12 athletes by simulation. Where the model has one slope for all the SD is 0, and the limits say how much may be
    /// hidden: given only where slopes differ, they would hold up to 97 of 100. Everything that happened to athletes in the season is in it, not the training alone. Assumes straight trends.
    /// </remarks>
    /// <param name="season">The squad's season.</param>
    /// <param name="level">Level of the limits; 90 % by default.</param>
    /// <returns>The standard deviation, or <see cref="Refusal.TooFewAthletes"/> below 6 athletes with 3 tests.</returns>
    public static Answer<ResponseSpreadResult> OfSeason(SquadTrendResult season, ConfidenceLevel level = default)
    {
        ArgumentNullException.ThrowIfNull(season);
        return SquadTrend.SlopeSpreadLimits(season, level).Select(limits =>
        {
            var spread = season.SlopeSpread.Match(found => found.Value, _ => 0);
            return new ResponseSpreadResult
            {
                StandardDeviation = new Estimate(spread * season.SpanWeeks, Unit.Seconds, season.Athletes.Count, "SD of slopes between athletes times weeks, limits by Q-profile")
                {
                    Interval = new Interval(limits.Lower * season.SpanWeeks, limits.Upper * season.SpanWeeks, level),
                    Notes =
                    [
                        spread > 0
                            ? FormattableString.Invariant($"SD of slopes {spread:0.000} s/week over {season.SpanWeeks:0.#} weeks.")
                            : "The slopes differ by no more than the noise of the tests makes them: an SD of 0 fits best, which does not show that athletes respond alike.",
                        .. limits.Upper == 0 ? ["They differ by even less than the noise alone usually makes them: limits of 0 come from that chance, not from precise tests."] : Array.Empty<string>(),
                        "Without a comparison group everything that happened to athletes in the season is in it, not the training alone.",
                    ],
                },
            };
        });
    }

    private static IEnumerable<string> Notes(IndividualResponses responses)
    {
        if (responses.StandardDeviation < 0) yield return "Negative variance component: the comparison group scatters more; there is no evidence that athletes respond differently.";
        else if (responses.Interval.Lower <= 0) yield return "The interval reaches 0: the changes do not show that athletes respond differently.";
        yield return "Assumes the same noise in both groups.";
    }
}
