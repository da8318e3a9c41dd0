using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>The rate of slowing across the sets of one session: least squares in seconds and on logarithms, and a robust line.</summary>
public static class SetSlope
{
    private const int IntervalNeeds = 4;
    private const int RobustIntervalNeeds = 8;
    private const string Confounded = "Linear by construction; the order of sets is fixed, so time, fatigue and intended pacing cannot be told apart.";

    /// <summary>Fits the slopes of one session.</summary>
    /// <remarks>
    /// Least squares: b = Σ (k - k̄)(t_k - t̄) / Σ (k - k̄)² in seconds per set, t_k the time of set k of n, SE = s / √Σ (k - k̄)², s² = RSS / (n - 2), t interval with n - 2 degrees of
    /// freedom; the same on ln t, reported as 100 (exp(b) - 1) percent per set. Theil-Sen: the median of (t_l - t_k) / (l - k) over k &lt; l, with
    /// intercept the median of t_k - b k. Sets without a time are left out, the others keep their number.
    /// Sources, from memory: Theil 1950, Proc K Ned Akad Wet 53; Sen 1968, J Am Stat Assoc 63:1379-1389.
    /// Assumes a straight line and independent normal noise of sets.
    /// </remarks>
    /// <returns>The slopes, or <see cref="Refusal.TooFewSets"/> with fewer than 3 timed sets; the interval of the robust slope refuses with it below 8, and with <see cref="Refusal.ZeroVariance"/> where all sets are alike.</returns>
    public static Answer<SetSlopeResult> Fit(Session session, SetSlopeOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(session);
        var level = options?.Level ?? default;
        var timed = session.Sets.Where(set => set.Work is not null).ToList();
        if (timed.Count < 3) return new NotEstimable("the slope per set", Refusal.TooFewSets, 3, timed.Count, "timed sets");
        double[] set = [.. timed.Select(time => (double)time.Set)];
        double[] seconds = [.. timed.Select(time => time.Work!.Value.Value)];
        string[] notes = session.IsComplete ? [Confounded] : [Confounded, SetProfile.Completed(session)];
        var line = StraightLine.Of(set, seconds);
        var logLine = StraightLine.Of(set, LogScale.Of(seconds));
        // Sets that are all alike have no ranks to speak of: the robust line is flat.
        var robust = TheilSen.Fit(set, seconds, level);
        Estimate Describe(double value, Unit unit, string method) => new(value, unit, set.Length, method) { Notes = notes };
        Estimate Slope(StraightLine fit, Unit unit, string method) => set.Length < IntervalNeeds
            ? Describe(unit == Unit.PercentPerSet ? Percent.FromLog(fit.Slope).Value : fit.Slope, unit, method).WithNotes("No interval: needs 4 sets.")
            : TInterval.Of(fit.Slope, fit.SlopeError, set.Length - 2, unit, level, set.Length, method).WithNotes(notes);

        return new SetSlopeResult
        {
            Session = session,
            Linear = Slope(line, Unit.SecondsPerSet, "least squares of seconds on set"),
            Intercept = Describe(line.Intercept, Unit.Seconds, "least squares of seconds on set, at set 0"),
            Relative = Slope(logLine, Unit.PercentPerSet, "least squares of ln seconds on set, back-transformed"),
            Robust = Describe(robust.Match(fit => fit.Slope, _ => 0), Unit.SecondsPerSet, "Theil-Sen, median of pairwise slopes"),
            RobustIntercept = Describe(robust.Match(fit => fit.Intercept, _ => seconds[0]), Unit.Seconds, "Theil-Sen, median of t - b k"),
            RobustInterval = robust.TryGet(out var fitted) && fitted.Interval is { } limits && set.Length >= RobustIntervalNeeds
                ? limits
                : new NotEstimable("the interval of the robust slope", robust.IsEstimated ? Refusal.TooFewSets : Refusal.ZeroVariance, RobustIntervalNeeds, set.Length, "timed sets that differ"),
        };
    }
}
