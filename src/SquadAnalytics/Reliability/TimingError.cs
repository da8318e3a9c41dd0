using SquadAnalytics.Internals;

namespace SquadAnalytics.Reliability;

/// <summary>The share of recording in the noise.</summary>
public static class TimingError
{
    /// <summary>SD that rounding and hand timing add to a session total.</summary>
    /// <remarks>
    /// Rounding to a step h has variance h² / 12 per set if it is to the nearest step; cutting off also lowers each set by h / 2 on average:
    /// ask which was done. Hand times of a 40-yd sprint ran 0.22 to 0.31 s faster than electronic ones, largely systematic (Mayhew et al.
    /// 2010, J Strength Cond Res 24:447-451; Mann et al. 2015, 29:1509-1514), which cancels in a change with the same timer; a random SD of
    /// 0.2 s per set is assumed. Over n independent sets: √(n h² / 12) and √n times the hand SD, in seconds. Source of the formulas: variance of a uniform error, textbook. One watch for a squad shifts whole sets: record the timer.
    /// </remarks>
    /// <param name="sets">Number of sets n; 1 or more.</param>
    /// <param name="step">The step h in which times are written; above 0.</param>
    /// <param name="handPerSet">Random SD of hand timing per set; null for the assumed 0.2 s, 0 for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">The sets are below 1, the step is not above 0, or the SD is below 0.</exception>
    public static TimingErrorResult Of(int sets, Seconds step, Seconds? handPerSet = null)
    {
        Require.AtLeast(1, sets);
        Require.Positive(step.Value, nameof(step));
        var hand = handPerSet ?? new Seconds(0.2);
        if (hand.Value < 0) throw new ArgumentOutOfRangeException(nameof(handPerSet), hand.Value, "An SD is 0 or more.");
        var rounding = Math.Sqrt(sets / 12.0) * step.Value;
        var byHand = Math.Sqrt(sets) * hand.Value;
        var both = double.Hypot(rounding, byHand);
        Estimate In(double value, string method) => new(value, Unit.Seconds, sets, method) { Notes = ["Already inside a typical error from the same data."] };
        return new TimingErrorResult
        {
            Rounding = In(rounding, "√(n h² / 12)"),
            Hand = In(byHand, handPerSet is null ? "√n 0.2 s, assumed" : "√n times the SD per set"),
            OfTotal = In(both, "rounding and hand timing together"),
            OfDifference = In(Math.Sqrt(2) * both, "√2 times that of a total"),
        };
    }
}
