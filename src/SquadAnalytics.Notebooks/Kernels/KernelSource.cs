namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>Keeps one warm process in reserve, so that the next notebook does not wait for one.</summary>
/// <param name="command">How processes are started.</param>
/// <param name="limits">What each may use up.</param>
public sealed class KernelSource(KernelCommand command, KernelLimits limits) : IAsyncDisposable
{
    private readonly Lock _gate = new();
    private KernelProcess? _spare;
    private bool _closed;

    /// <summary>What each process may use up.</summary>
    public KernelLimits Limits => limits;

    /// <summary>Starts the spare process where there is none.</summary>
    public void Prepare()
    {
        lock (_gate)
        {
            ObjectDisposedException.ThrowIf(_closed, this);
            _ = Spare();
        }
    }

    /// <summary>Lets the spare process practise cells that will probably be run; see <see cref="KernelProcess.Practise"/>.</summary>
    /// <param name="workingFolder">Where relative paths in cells start.</param>
    /// <param name="logbookFolder">The logbook's folder, or null for none.</param>
    /// <param name="cells">The cells.</param>
    public void Practise(string workingFolder, string? logbookFolder, IReadOnlyList<CellCode> cells)
    {
        lock (_gate)
        {
            ObjectDisposedException.ThrowIf(_closed, this);
            Spare().Practise(workingFolder, logbookFolder, cells);
        }
    }

    /// <summary>
    /// Hands over the spare process, or a new one where there is none, once it is ready and has the notebook's folders; the caller disposes
    /// of it. One that does not become ready in its time is ended, and one other is tried.
    /// </summary>
    /// <param name="workingFolder">Where relative paths in cells start.</param>
    /// <param name="logbookFolder">The logbook's folder, or null for none.</param>
    /// <param name="coming">Cells that will be run next if all goes well; empty where that is not known.</param>
    /// <param name="cancellationToken">Stops the waiting.</param>
    /// <exception cref="KernelException">The process ended, took too long twice, or the logbook cannot be opened.</exception>
    public async Task<ReadyKernel> TakeAsync(string workingFolder, string? logbookFolder, IReadOnlyList<CellCode> coming, CancellationToken cancellationToken = default)
    {
        try
        {
            return await ReadyAsync(Take(), workingFolder, logbookFolder, coming, cancellationToken).ConfigureAwait(false);
        }
        catch (KernelException error) when (error.WasTooSlow)
        {
            return await ReadyAsync(Take(), workingFolder, logbookFolder, coming, cancellationToken).ConfigureAwait(false);
        }
    }

    private static async Task<ReadyKernel> ReadyAsync(KernelProcess process, string workingFolder, string? logbookFolder, IReadOnlyList<CellCode> coming, CancellationToken cancellationToken)
    {
        try
        {
            // Asked before the process is ready, so that it reads the logbook while it warms up.
            var opening = process.OpenAsync(workingFolder, logbookFolder, coming, cancellationToken);
            var identity = await process.ReadyAsync(cancellationToken).ConfigureAwait(false);
            return new(process, identity, await opening.ConfigureAwait(false));
        }
        catch (Exception error) when (error is KernelException or OperationCanceledException)
        {
            await process.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    private KernelProcess Take()
    {
        lock (_gate)
        {
            ObjectDisposedException.ThrowIf(_closed, this);
            var taken = _spare;
            _spare = null;
            if (taken is { IsAlive: true }) return taken;
            Discard(taken);
            return KernelProcess.Start(command, limits);
        }
    }

    /// <summary>Ends the spare process.</summary>
    public async ValueTask DisposeAsync()
    {
        KernelProcess? spare;
        lock (_gate)
        {
            _closed = true;
            spare = _spare;
            _spare = null;
        }
        if (spare is not null) await spare.DisposeAsync().ConfigureAwait(false);
    }

    private KernelProcess Spare()
    {
        if (_spare is { IsAlive: true } spare) return spare;
        Discard(_spare);
        return _spare = KernelProcess.Start(command, limits);
    }

    // A process that is gone already: disposing of it only lets go of its handles.
    private static void Discard(KernelProcess? gone) => _ = gone?.DisposeAsync().AsTask();
}
