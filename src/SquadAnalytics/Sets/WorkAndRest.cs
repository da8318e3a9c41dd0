namespace SquadAnalytics.Sets;

/// <summary>Work and rest on the rolling clock: a faster set earns more rest.</summary>
public static class WorkAndRest
{
    private const string SameInformation = "Work time and rest are the same information while no start is missed (rest = start interval - work time): never put both into one model.";
    private const string NoRestLeft = "At least one set left no rest.";

    /// <summary>Describes the clock of one session.</summary>
    /// <remarks>
    /// start_1 = 0; start_k = max((k-1) T, finish_(k-1)); finish_k = start_k + t_k; rest_k = max(0, k T - finish_k) for k &lt; n;
    /// late_k = start_k - (k-1) T; T the start interval, t_k and r_k work and rest of set k of n, W the total, all in seconds. Work to rest = Σ t_k / Σ r_k over k &lt; n; density = W / finish_n; rest lost D_k = Σ_(j &lt;= k) (t_j - t_1).
    /// Source: arithmetic. Changes of work to rest alter fatigue indices: La Monica et al. 2016, J Strength Cond Res 30:400-406.
    /// Assumes starts exactly on the clock.
    /// </remarks>
    /// <returns>The clock, or <see cref="Refusal.IntervalUnknown"/> without a start interval, or <see cref="Refusal.IncompleteSession"/>
    /// without a first set. The ratios are refused where a set is missing or a missed start ended the test
    /// (<see cref="Refusal.IncompleteSession"/>), or where no rest was left at all (<see cref="Refusal.NoRest"/>).</returns>
    public static Answer<WorkAndRestResult> Summarize(Session session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var protocol = session.Protocol;
        if (protocol.StartInterval is not { } interval)
            return new NotEstimable("work and rest", Refusal.IntervalUnknown, "the start interval of the protocol", "none");
        double[] times = [.. session.Sets.TakeWhile(set => set.Work is not null).Select(set => set.Work!.Value.Value)];
        if (times.Length == 0) return new NotEstimable("work and rest", Refusal.IncompleteSession, "a time for set 1", "none");
        var sets = RollingClock.Run(times, protocol.Sets, interval.Value, session.EndedAfterSet);
        NotEstimable? incomplete = session.IsComplete ? null : new NotEstimable("the work-to-rest ratio", Refusal.IncompleteSession, protocol.Sets, sets.Count, "sets on the clock");
        string[] notes = sets.Any(set => set.Rest?.Value == 0) ? [SameInformation, NoRestLeft] : [SameInformation];
        Estimate Ratio(double value, string method) => new(value, Unit.None, sets.Count, method) { Notes = notes };
        Answer<Estimate> WorkToRest()
        {
            var rest = sets.Sum(set => set.Rest?.Value ?? 0);
            return rest > 0
                ? Ratio(sets.Take(sets.Count - 1).Sum(set => set.Work.Value) / rest, "Σ work / Σ rest, last set left out")
                : new NotEstimable("the work-to-rest ratio", Refusal.NoRest, "some rest between sets", "none");
        }

        return new WorkAndRestResult
        {
            Session = session,
            StartInterval = interval,
            Sets = sets,
            WorkToRest = incomplete is null ? WorkToRest() : incomplete,
            Density = incomplete is null ? Ratio(times.Sum() / sets[^1].Finish.Value, "total / finish of the last set") : incomplete,
        };
    }
}
