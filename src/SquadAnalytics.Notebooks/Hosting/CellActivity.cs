namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>
/// Tells whether a cell's code still runs. The engine reports a cancelled cell as ended while its synchronous code goes on; such a
/// process must not be used further, so its end is only reported once the code is quiet, and otherwise the workbench ends the process.
/// </summary>
internal sealed class CellActivity
{
    private const int QuietLooks = 2;
    private const int GlancesPerLook = 20;
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(50);
    private volatile Thread? _thread;

    /// <summary>Notes the thread on which the engine starts the cell's code.</summary>
    public void Note() => _thread = Thread.CurrentThread;

    /// <summary>Ends when the code does nothing any more; never, if it never does.</summary>
    public async Task UntilQuietAsync()
    {
        for (var quiet = 0; quiet < QuietLooks;)
        {
            await Task.Delay(BetweenLooks).ConfigureAwait(false);
            quiet = IsBusy() ? 0 : quiet + 1;
        }
    }

    /// <summary>
    /// Whether something runs throughout a short while: the pool counts a thread as working, too, that it woke up only to see whether there
    /// is more to do, and the thread that asks is busy with asking.
    /// </summary>
    private bool IsBusy()
    {
        for (var glance = 0; glance < GlancesPerLook; glance++)
        {
            if (!IsBusyNow()) return false;
            Thread.Sleep(1);
        }

        return true;
    }

    private bool IsBusyNow() =>
        (_thread is { IsAlive: true } thread && thread != Thread.CurrentThread && (thread.ThreadState & (ThreadState.WaitSleepJoin | ThreadState.Stopped)) == 0)
        || BusyWorkers() > 0;

    /// <summary>Threads of the pool that work on something, without the one that asks.</summary>
    private static int BusyWorkers()
    {
        ThreadPool.GetMaxThreads(out var all, out _);
        ThreadPool.GetAvailableThreads(out var idle, out _);
        return all - idle - (Thread.CurrentThread.IsThreadPoolThread ? 1 : 0);
    }
}
