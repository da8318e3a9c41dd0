using System.Diagnostics;

namespace SquadAnalytics.Benchmarks;

/// <summary>Wall-clock seconds and memory of a piece of work in this process.</summary>
internal static class Stopwatching
{
    /// <summary>The median of the timed runs, after the stated number of runs that only warm up.</summary>
    public static double MedianSeconds(Action work, int runs, int warmUps)
    {
        for (var k = 0; k < warmUps; k++) work();
        var seconds = new double[runs];
        for (var k = 0; k < runs; k++)
        {
            var start = Stopwatch.GetTimestamp();
            work();
            seconds[k] = Stopwatch.GetElapsedTime(start).TotalSeconds;
        }

        Array.Sort(seconds);
        return (seconds[(runs - 1) / 2] + seconds[runs / 2]) / 2;
    }

    /// <summary>Bytes that the work allocates on all threads, results among them, whether or not they are given back on the way.</summary>
    public static long AllocatedBytes(Action work)
    {
        var before = GC.GetTotalAllocatedBytes(precise: true);
        work();
        return GC.GetTotalAllocatedBytes(precise: true) - before;
    }
}
