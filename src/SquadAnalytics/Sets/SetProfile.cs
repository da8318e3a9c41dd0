using SquadAnalytics.Internals;

namespace SquadAnalytics.Sets;

/// <summary>The level of one session: total, mean, best, worst, range and spread of its sets.</summary>
public static class SetProfile
{
    /// <summary>Describes one session.</summary>
    /// <remarks>
    /// W = Σ t_k; mean = Σ t_k / c over the c completed sets; best = min; worst = max; range = worst - best; SD with c - 1;
    /// CV = 100 SD / mean, in percent; the others in seconds. The spread across sets mixes trend and scatter: it is not a typical error. Descriptive; no interval.
    /// Assumes nothing: it describes one session. Source: textbook definitions.
    /// </remarks>
    /// <returns>The measures. The total is refused (<see cref="Refusal.IncompleteSession"/>) where a set is missing, the spread
    /// (<see cref="Refusal.TooFewSets"/>) with one completed set, and everything with none.</returns>
    public static Answer<SetProfileResult> Summarize(Session session)
    {
        ArgumentNullException.ThrowIfNull(session);
        double[] times = [.. session.TimesSeconds];
        if (times.Length == 0) return new NotEstimable("the set profile", Refusal.TooFewSets, 1, 0, "timed sets");
        var measures = SetMeasures.Of(times);
        Estimate Describe(double value, Unit unit, string method) => new(value, unit, times.Length, method)
        {
            Notes = session.IsComplete ? [] : [Completed(session)],
        };
        Answer<Estimate> Spread(double value, Unit unit, string measure, string method) => times.Length < 2
            ? new NotEstimable(measure, Refusal.TooFewSets, 2, times.Length, "timed sets")
            : Describe(value, unit, method).WithNotes("Mixes trend and scatter across sets; not a typical error.");

        return new SetProfileResult
        {
            Session = session,
            Total = session.Total.Select(total => Describe(total.Value, Unit.Seconds, "sum of all sets")),
            Mean = Describe(measures.Mean, Unit.Seconds, "mean of the completed sets"),
            Best = Describe(measures.Best, Unit.Seconds, "fastest completed set"),
            Worst = Describe(measures.Worst, Unit.Seconds, "slowest completed set"),
            Range = Describe(measures.Worst - measures.Best, Unit.Seconds, "slowest minus fastest completed set"),
            StandardDeviation = Spread(measures.StandardDeviation, Unit.Seconds, "the SD across sets", "SD (n - 1) across sets"),
            CoefficientOfVariation = Spread(measures.CoefficientOfVariation, Unit.Percent, "the CV across sets", "100 SD / mean across sets"),
        };
    }

    internal static string Completed(Session session) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{session.TimesSeconds.Count} of {session.Protocol.Sets} sets.");
}
