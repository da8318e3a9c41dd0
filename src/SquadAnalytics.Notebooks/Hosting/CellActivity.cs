namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>
/// Tells whether a cell's code still runs. The engine reports a cancelled cell as ended while its synchronous code goes on; such a
/// process must not be used further, so its end is only reported once the code is quiet, and otherwise the workbench ends the process.
/// </summary>
internal sealed class CellActivity
{
    private const int QuietLooks = 2;
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

    private bool IsBusy() => _thread is { IsAlive: true } thread && (thread.ThreadState & (ThreadState.WaitSleepJoin | ThreadState.Stopped)) == 0 || BusyWorkers() > 0;

    /// <summary>Threads of the pool that work on something, without the one that asks.</summary>
    private static int BusyWorkers()
    {
        ThreadPool.GetMaxThreads(out var all, out _);
        ThreadPool.GetAvailableThreads(out var idle, out _);
        return all - idle - (Thread.CurrentThread.IsThreadPoolThread ? 1 : 0);
    }
}
