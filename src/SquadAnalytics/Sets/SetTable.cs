using System.Globalization;

namespace SquadAnalytics.Sets;

/// <summary>Many sessions by columns: one row per set, for the measures of a whole archive at once.</summary>
/// <remarks>Rows of one session need not stand together, but the sets of a session are taken in the order of their rows.</remarks>
public static class SetTable
{
    private const int SessionsPerTask = 16_384;

    /// <summary>Computes the per-session measures of all sessions.</summary>
    /// <remarks>The same arithmetic as <see cref="SetProfile"/>, <see cref="FatigueIndices"/> and <see cref="SetSlope"/>, with their units, sources and assumptions. Time grows with the number of rows.</remarks>
    /// <param name="athlete">Number of the athlete, one per row.</param>
    /// <param name="session">Number of the athlete's session, one per row.</param>
    /// <param name="timesSeconds">Work time, one per row; finite and above 0 s.</param>
    /// <returns>One row per session in the order of athlete and session; sessions with fewer than 2 sets are left out and counted.</returns>
    /// <exception cref="ArgumentException">The columns differ in length, or a time is not a number above 0.</exception>
    public static SetTableMeasures Summarize(ReadOnlyMemory<int> athlete, ReadOnlyMemory<int> session, ReadOnlyMemory<double> timesSeconds)
    {
        if (athlete.Length != timesSeconds.Length || session.Length != timesSeconds.Length)
            throw new ArgumentException($"The columns must be equally long, but have {athlete.Length}, {session.Length} and {timesSeconds.Length} rows.", nameof(timesSeconds));
        var runs = SetTableRuns.Find(athlete.Span, session.Span);
        var times = timesSeconds;
        if (!runs.IsOrdered)
        {
            var gathered = runs.Gather(timesSeconds.Span);
            times = gathered;
        }

        var measures = new SetTableMeasures(runs);
        var tasks = (runs.Count + SessionsPerTask - 1) / SessionsPerTask;
        var firstBad = new int[Math.Max(1, tasks)];
        Parallel.For(0, tasks, task =>
            firstBad[task] = measures.Fill(times.Span, task * SessionsPerTask, Math.Min(runs.Count, (task + 1) * SessionsPerTask)));
        foreach (var bad in firstBad)
        {
            if (bad > 0)
                throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Work times must be finite numbers above 0, but session {runs.Session[bad - 1]} of athlete {runs.Athlete[bad - 1]} has another."), nameof(timesSeconds));
        }

        return measures;
    }
}
