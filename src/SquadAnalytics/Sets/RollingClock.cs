namespace SquadAnalytics.Sets;

/// <summary>The arithmetic of the rolling clock: when each set starts and finishes, and what rest it leaves.</summary>
internal static class RollingClock
{
    /// <summary>start_1 = 0; start_k = max((k-1)T, finish_(k-1)); finish_k = start_k + t_k; rest_k = max(0, kT - finish_k); late_k = start_k - (k-1)T.</summary>
    /// <param name="timesSeconds">Work times of the first sets, without gaps.</param>
    /// <param name="sets">Number of sets of the protocol; the last one has no rest.</param>
    /// <param name="intervalSeconds">Start interval T.</param>
    /// <param name="endedAfter">The set after which the test was over because a start was missed, or null.</param>
    public static IReadOnlyList<ClockSet> Run(ReadOnlySpan<double> timesSeconds, int sets, double intervalSeconds, int? endedAfter = null)
    {
        var rows = new List<ClockSet>(timesSeconds.Length);
        double finish = 0, lost = 0;
        for (var k = 0; k < timesSeconds.Length && k < (endedAfter ?? int.MaxValue); k++)
        {
            var signal = k * intervalSeconds;
            var start = Math.Max(signal, finish);
            finish = start + timesSeconds[k];
            lost += timesSeconds[k] - timesSeconds[0];
            var isLast = k + 1 == sets || k + 1 == endedAfter;
            rows.Add(new ClockSet(k + 1, new Seconds(start), new Seconds(timesSeconds[k]), new Seconds(finish), new Seconds(start - signal))
            {
                Rest = isLast ? null : new Seconds(Math.Max(0, (k + 1) * intervalSeconds - finish)),
                RestLost = isLast ? null : new Seconds(lost),
            });
        }

        return rows;
    }
}
