using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>How much of an athlete's change remains when the noise of the test and the squad's common change are taken into account.</summary>
public static class ChangeShrinkage
{
    private const int Needed = 6;

    /// <summary>Shrinks the changes of a squad in seconds.</summary>
    /// <remarks>
    /// True change ~ N(μ, ω²), D_i ~ N(true change, SE_i²), in seconds. Plug-in: μ the squad's mean change, ω² = max(0, s_D² - SE²) (s_D the SD of the D_i, SE² the mean of the
    /// athletes' squared standard errors), centre w D + (1 - w) μ, w = ω² / (ω² + SE²), SD √w SE. It takes μ and ω for known, which is far too
    /// sure of itself in a squad: 90 % intervals would hold 55 to 75 % of true changes. The posterior therefore counts what is not known of μ, of ω
    /// and of the typical error (with its degrees of freedom), flat on μ; ω = 0 is believed as far as the changes differ by less than they err,
    /// by the belief in ω of <see cref="SquadTrend.Fit"/> with D_i for b_i and SE_i for s_i.
    /// It answers another question than the verdict; show both.
    /// Assumes normal true changes and independent normal errors.
    /// Sources, from memory: Efron and Morris 1973, J Am Stat Assoc 68:117-130; Morris 1983, same 78:47-55; the belief about ω is this library's own, chosen by simulation.
    /// </remarks>
    /// <param name="changes">The squad's changes, on the scale of seconds.</param>
    /// <param name="worthwhile">The smallest worthwhile change S, in seconds.</param>
    /// <param name="level">Level of the intervals.</param>
    /// <returns>The rows, or <see cref="Refusal.TooFewAthletes"/> below 6 athletes with a change. With ω = 0 every row is the squad's mean
    /// and a note names the negative variance component.</returns>
    /// <exception cref="ArgumentException">The changes or S are not in seconds.</exception>
    public static Answer<ChangeShrinkageResult> Fit(SquadChangesResult changes, SmallestWorthwhileChange worthwhile, ConfidenceLevel level = default)
    {
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(worthwhile);
        worthwhile.RequireUnit(Unit.Seconds, nameof(worthwhile));
        List<AthleteChangeResult> rows = [.. changes.Rows.Where(row => row.Change.IsEstimated).Select(row => row.Change.GetOrThrow())];
        if (rows.Exists(row => row.Change.Unit != Unit.Seconds)) throw new ArgumentException("The changes must be in seconds.", nameof(changes));
        if (rows.Count < Needed) return new NotEstimable("shrunken changes", Refusal.TooFewAthletes, Needed, rows.Count, "athletes with a change");
        double[] observed = [.. rows.Select(row => row.Change.Value)];
        var mean = Descriptive.Mean(observed);
        var noise = Descriptive.Mean([.. rows.Select(row => row.Change.StandardError!.Value * row.Change.StandardError.Value)]);
        var spread = Math.Sqrt(Math.Max(0, Descriptive.Variance(observed) - noise));
        var hierarchy = new NormalHierarchy(observed, [.. rows.Select(row => row.Change.StandardError!.Value)], rows[0].Change.DegreesOfFreedom!.Value);
        return new ChangeShrinkageResult
        {
            Mean = new Estimate(mean, Unit.Seconds, rows.Count, "mean change over athletes"),
            Spread = new Estimate(spread, Unit.Seconds, rows.Count, "√(variance of changes - mean squared standard error)"),
            Rows = [.. rows.Select((row, index) => Shrunken(row, mean, spread, hierarchy.Of(index), worthwhile.Estimate.Value, level))],
            Notes =
            [
                "The posterior counts that the squad's mean and spread and the typical error are not known.",
                .. spread == 0 ? ["Negative variance component: no evidence that athletes differ in their change."] : Array.Empty<string>(),
            ],
        };
    }

    private static ShrunkenChange Shrunken(AthleteChangeResult row, double mean, double spread, TMixture known, double worthwhile, ConfidenceLevel level)
    {
        var standardError = row.Change.StandardError!.Value;
        var weight = spread * spread / (spread * spread + standardError * standardError);
        Estimate Of(double value, double deviation, string method) => new(value, Unit.Seconds, row.Change.Observations, method) { StandardError = deviation };
        return new ShrunkenChange(row.AthleteId, row.Change,
            Of(known.Mean, known.Deviation, "posterior, squad's mean and spread unknown") with { Interval = known.Limits(level) },
            Of(weight * row.Change.Value + (1 - weight) * mean, Math.Sqrt(weight) * standardError, FormattableString.Invariant($"plug-in, weight {weight:0.000} on the athlete's own change")),
            new Estimate(known.Cdf(-worthwhile), Unit.Probability, row.Change.Observations, "posterior, squad's mean and spread unknown"));
    }
}
