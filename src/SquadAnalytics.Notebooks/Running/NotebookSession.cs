using System.Globalization;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Running;

/// <summary>
/// A notebook that a person works on: its cells are run one by one in a process that is started with the first, can be interrupted and
/// restarted, and is given up when it has been idle for long. Values live as long as the process.
/// </summary>
/// <param name="kernels">Where processes come from.</param>
/// <param name="workingFolder">Where relative paths in cells start.</param>
/// <param name="logbookFolder">The logbook's folder, or null for none.</param>
/// <param name="time">The clock that says when the process was idle for too long.</param>
public sealed class NotebookSession(KernelSource kernels, string workingFolder, string? logbookFolder, TimeProvider time) : IAsyncDisposable
{
    // Whoever writes waits no longer than this for a process that is being started.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly SemaphoreSlim _turn = new(1);
    private readonly Lock _gate = new();
    private KernelProcess? _kernel;
    private CancellationTokenSource? _running;
    private ITimer? _idle;
    private int _cells;

    /// <summary>Raised when <see cref="State"/> changes, on any thread.</summary>
    public event Action? Changed;

    /// <summary>How it stands with the process.</summary>
    public SessionState State { get; private set; }

    /// <summary>What happened to the process and its values, as a sentence; null while they are there.</summary>
    public string? Note { get; private set; }

    /// <summary>How many cells were run in the present process.</summary>
    public int Executions { get; private set; }

    /// <summary>Id of the process in the operating system, or null where there is none.</summary>
    public int? ProcessId => _kernel is { IsAlive: true } kernel ? kernel.ProcessId : null;

    /// <summary>Runs one cell, after the one that runs already; starts the process where there is none.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="onOutput">Told of each piece of output as it comes, on another thread; may be null.</param>
    /// <param name="cancellationToken">Stops the cell.</param>
    /// <exception cref="KernelException">The process cannot be started, or the logbook cannot be opened.</exception>
    public async Task<CellResult> RunAsync(CellCode cell, Action<CellOutput>? onOutput = null, CancellationToken cancellationToken = default)
    {
        Interlocked.Increment(ref _cells);
        try
        {
            await _turn.WaitAsync(cancellationToken).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            Interlocked.Decrement(ref _cells);
            throw;
        }
        try
        {
            using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
            lock (_gate) _running = stop;
            var kernel = await ProcessAsync(stop.Token).ConfigureAwait(false);
            Executions++;
            Become(SessionState.Running, null);
            var result = await kernel.RunAsync(cell, onOutput, stop.Token).ConfigureAwait(false);
            if (kernel.IsAlive) Become(SessionState.Ready, null);
            else Become(SessionState.Ended, "The notebook's process has ended and its values are gone; running a cell starts another. " + result.Fault?.Message);
            return result;
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            // Interrupted while the process was still starting.
            return new(CellEnding.Cancelled, [], new CellFault("Stopped by request."), TimeSpan.Zero);
        }
        finally
        {
            lock (_gate) _running = null;
            Interlocked.Decrement(ref _cells);
            WatchIdleness();
            _turn.Release();
        }
    }

    /// <summary>Stops the running cell: it is asked to end, and where it does not listen its process is ended.</summary>
    public void Interrupt()
    {
        lock (_gate) _running?.Cancel();
    }

    /// <summary>Ends the process with all its values and starts another.</summary>
    public async Task RestartAsync()
    {
        Interrupt();
        await _turn.WaitAsync().ConfigureAwait(false);
        try
        {
            await EndProcessAsync().ConfigureAwait(false);
            await ProcessAsync(CancellationToken.None).ConfigureAwait(false);
        }
        finally
        {
            WatchIdleness();
            _turn.Release();
        }
    }

    /// <summary>Asks about code that is being written. While a cell runs, or waits for its turn, the answer is empty and comes at once.</summary>
    /// <param name="question">The question.</param>
    /// <param name="cell">The code.</param>
    /// <param name="place">Where in the code.</param>
    /// <param name="cancellationToken">Stops the waiting.</param>
    public async Task<CodeAnswer> AskAsync(CodeQuestion question, CellCode cell, CodePlace place = default, CancellationToken cancellationToken = default)
    {
        if (Volatile.Read(ref _cells) > 0 || !await _turn.WaitAsync(Patience, cancellationToken).ConfigureAwait(false)) return CodeAnswer.Empty;
        try
        {
            // Only to tell which values there are, no process is started.
            if (question == CodeQuestion.Values && ProcessId is null) return CodeAnswer.Empty;
            var kernel = await ProcessAsync(cancellationToken).ConfigureAwait(false);
            return await kernel.AskAsync(question, cell, place, cancellationToken).ConfigureAwait(false);
        }
        catch (Exception error) when (error is KernelException or OperationCanceledException)
        {
            return CodeAnswer.Empty;
        }
        finally
        {
            WatchIdleness();
            _turn.Release();
        }
    }

    /// <summary>Ends the process.</summary>
    public async ValueTask DisposeAsync()
    {
        Interrupt();
        if (_idle is { } idle) await idle.DisposeAsync().ConfigureAwait(false);
        await _turn.WaitAsync().ConfigureAwait(false);
        await EndProcessAsync().ConfigureAwait(false);
        _turn.Dispose();
    }

    private async Task<KernelProcess> ProcessAsync(CancellationToken cancellationToken)
    {
        if (_kernel is { IsAlive: true } known) return known;
        await EndProcessAsync().ConfigureAwait(false);
        Become(SessionState.Starting, Note);
        try
        {
            _kernel = (await kernels.TakeAsync(workingFolder, logbookFolder, [], cancellationToken).ConfigureAwait(false)).Process;
        }
        catch (Exception error) when (error is KernelException or OperationCanceledException)
        {
            Become(error is KernelException ? SessionState.Ended : SessionState.NotStarted, error is KernelException ? error.Message : Note);
            throw;
        }
        Become(SessionState.Ready, Note);
        return _kernel;
    }

    private async Task EndProcessAsync()
    {
        if (_kernel is not { } kernel) return;
        _kernel = null;
        Executions = 0;
        await kernel.DisposeAsync().ConfigureAwait(false);
    }

    private void WatchIdleness()
    {
        if (ProcessId is null) return;
        var limit = kernels.Limits.IdleTime;
        if (_idle is { } idle) idle.Change(limit, Timeout.InfiniteTimeSpan);
        else _idle = time.CreateTimer(_ => _ = GiveUpAsync(), null, limit, Timeout.InfiniteTimeSpan);
    }

    private async Task GiveUpAsync()
    {
        if (!await _turn.WaitAsync(TimeSpan.Zero).ConfigureAwait(false)) return;
        try
        {
            if (_kernel is null) return;
            await EndProcessAsync().ConfigureAwait(false);
            Become(SessionState.GivenUp, string.Create(CultureInfo.InvariantCulture, $"Nothing was run for {Words(kernels.Limits.IdleTime)}, so the notebook's process was given up and its values are gone. Running a cell starts another."));
        }
        finally
        {
            _turn.Release();
        }
    }

    private static string Words(TimeSpan time) => time.TotalMinutes >= 1
        ? string.Create(CultureInfo.InvariantCulture, $"{time.TotalMinutes:0.#} minutes")
        : string.Create(CultureInfo.InvariantCulture, $"{time.TotalSeconds:0.#} seconds");

    private void Become(SessionState state, string? note)
    {
        (State, Note) = (state, note);
        Changed?.Invoke();
    }
}
