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

    /// <summary>Hands over the spare process, or a new one where there is none; the caller disposes of it.</summary>
    public KernelProcess Take()
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
