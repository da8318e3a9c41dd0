using System.Diagnostics;
using System.Globalization;
using System.IO.Pipes;
using SquadAnalytics.Notebooks.Wire;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>
/// The process in which one notebook runs, seen from the workbench. It speaks over a private pipe, is watched from outside, and can
/// always be ended; nothing that it says is trusted further than its form. It is not a security sandbox.
/// </summary>
public sealed partial class KernelProcess : IAsyncDisposable
{
    // Between making a pipe inheritable and letting go of the child's end, no other child may be started: it would inherit that end too.
    private static readonly Lock Starting = new();
    private static readonly TimeSpan WatchInterval = TimeSpan.FromMilliseconds(50);
    private static readonly TimeSpan LastWords = TimeSpan.FromSeconds(2);

    private readonly KernelLimits _limits;
    private readonly Process _process;
    private readonly MessageChannel _channel;
    private readonly ProcessText _standardOutput;
    private readonly ProcessText _standardError;
    private readonly TaskCompletionSource<KernelIdentity> _ready = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource<SessionOpened> _opened = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task _reading;
    private readonly Task<Departure> _gone;
    private readonly Lock _gate = new();
    private RunningCell? _running;
    private CellEnding? _endedFor;
    private int? _exitAnnounced;
    private int _tickets;

    private KernelProcess(KernelLimits limits, Process process, MessageChannel channel)
    {
        _limits = limits;
        _process = process;
        _channel = channel;
        _standardOutput = new ProcessText(process.StandardOutput, limits.OutputSize, () => End(CellEnding.OutputLimit));
        _standardError = new ProcessText(process.StandardError, limits.OutputSize, () => End(CellEnding.OutputLimit));
        _reading = Task.Factory.StartNew(Listen, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        _gone = WatchAsync();
    }

    /// <summary>The process's id in the operating system.</summary>
    public int ProcessId => _process.Id;

    /// <summary>Whether the process still runs.</summary>
    public bool IsAlive => !_gone.IsCompleted && _endedFor is null;

    /// <summary>Starts a process. It warms itself up in the background; <see cref="ReadyAsync"/> tells when it is done.</summary>
    /// <param name="command">How to start it.</param>
    /// <param name="limits">What it may use up.</param>
    /// <exception cref="KernelException">It cannot be started.</exception>
    public static KernelProcess Start(KernelCommand command, KernelLimits limits)
    {
        ArgumentNullException.ThrowIfNull(command);
        ArgumentNullException.ThrowIfNull(limits);
        lock (Starting)
        {
            using var toChild = new PipePair(PipeDirection.Out);
            using var fromChild = new PipePair(PipeDirection.In);
            var start = new ProcessStartInfo(command.FileName)
            {
                UseShellExecute = false,
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            };
            foreach (var argument in command.Arguments) start.ArgumentList.Add(argument);
            start.ArgumentList.Add(toChild.ChildHandle);
            start.ArgumentList.Add(fromChild.ChildHandle);
            // Hexadecimal, as the runtime reads it.
            start.Environment["DOTNET_GCHeapHardLimit"] = limits.ManagedBytes.ToString("X", CultureInfo.InvariantCulture);
            start.Environment["DOTNET_gcServer"] = "0";
            start.Environment["DOTNET_gcConcurrent"] = "0";
            start.Environment["DOTNET_TieredPGO"] = "0";
            start.Environment["DOTNET_DbgEnableMiniDump"] = "0";
            try
            {
                var process = Process.Start(start) ?? throw new KernelException($"{command.FileName} could not be started.");
                process.StandardInput.Close();
                return new KernelProcess(limits, process, new MessageChannel(fromChild.Take(), toChild.Take()));
            }
            catch (System.ComponentModel.Win32Exception error)
            {
                throw new KernelException($"{command.FileName} could not be started: {error.Message}");
            }
        }
    }

    /// <summary>Waits until the process is warm, and says what it runs on.</summary>
    /// <exception cref="KernelException">It ended, or took too long.</exception>
    public async Task<KernelIdentity> ReadyAsync(CancellationToken cancellationToken = default)
    {
        var first = await Task.WhenAny(_ready.Task, _gone, Task.Delay(_limits.StartTime, cancellationToken)).ConfigureAwait(false);
        cancellationToken.ThrowIfCancellationRequested();
        if (first == _ready.Task) return await _ready.Task.ConfigureAwait(false);
        if (first == _gone) throw new KernelException("The notebook's process did not become ready. " + (await _gone.ConfigureAwait(false)).Message(_limits));
        End(CellEnding.TimeLimit);
        throw KernelException.TooSlow(_limits.StartTime);
    }

    /// <summary>Lets a process that nobody uses yet run cells for practice; nothing of them remains but that the same cells run quickly.</summary>
    /// <param name="workingFolder">Where relative paths in cells start.</param>
    /// <param name="logbookFolder">The logbook's folder, or null for none.</param>
    /// <param name="cells">The cells.</param>
    public void Practise(string workingFolder, string? logbookFolder, IReadOnlyList<CellCode> cells) => Send(new Practise(workingFolder, logbookFolder, cells));

    /// <summary>Gives the process the folders that the notebook works with.</summary>
    /// <param name="workingFolder">Where relative paths in cells start.</param>
    /// <param name="logbookFolder">The logbook's folder, or null for none.</param>
    /// <param name="coming">Cells that will be run next if all goes well, so that they can be compiled meanwhile; empty where that is not known.</param>
    /// <param name="cancellationToken">Stops the waiting.</param>
    /// <returns>SHA-256 of the logbook's data, in hexadecimal, or null without a logbook.</returns>
    /// <exception cref="KernelException">The process ended, or the logbook cannot be opened.</exception>
    public async Task<string?> OpenAsync(string workingFolder, string? logbookFolder, IReadOnlyList<CellCode> coming, CancellationToken cancellationToken = default)
    {
        Send(new OpenSession(workingFolder, logbookFolder, coming));
        var first = await Task.WhenAny(_opened.Task, _gone, Task.Delay(_limits.StartTime, cancellationToken)).ConfigureAwait(false);
        cancellationToken.ThrowIfCancellationRequested();
        if (first == _opened.Task)
        {
            var opened = await _opened.Task.ConfigureAwait(false);
            return opened.Fault is { } fault ? throw new KernelException(fault.Message) : opened.Fingerprint;
        }
        if (first == _gone) throw new KernelException("The notebook's process could not open the logbook. " + (await _gone.ConfigureAwait(false)).Message(_limits));
        End(CellEnding.TimeLimit);
        throw KernelException.TooSlow(_limits.StartTime);
    }

    /// <summary>Runs one cell and waits for its end, whatever that is.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="onOutput">Told of each piece of output as it comes, on another thread; may be null.</param>
    /// <param name="cancellationToken">Stops the cell: it is asked first, then its process is ended.</param>
    /// <exception cref="InvalidOperationException">Another cell is running.</exception>
    public async Task<CellResult> RunAsync(CellCode cell, Action<CellOutput>? onOutput = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(cell);
        RunningCell run;
        lock (_gate)
        {
            if (_running is not null) throw new InvalidOperationException("A cell is already running in this process.");
            run = _running = new RunningCell(++_tickets, new OutputCollector(_limits.OutputSize, onOutput));
        }
        var clock = Stopwatch.StartNew();
        try
        {
            Send(new RunCell(run.Ticket, cell.Number, cell.Language, cell.Source));
            var stopped = await StopWhenDueAsync(run, cancellationToken).ConfigureAwait(false);
            return await EndOf(run, stopped, clock.Elapsed).ConfigureAwait(false);
        }
        finally
        {
            lock (_gate) _running = null;
        }
    }

    /// <summary>Ends the process and waits until it is gone.</summary>
    public async ValueTask DisposeAsync()
    {
        End(CellEnding.Cancelled);
        _ = await _gone.ConfigureAwait(false);
        // A stream that is being read cannot be closed: a process left behind by a cell may still hold the pipe's other end.
        if (_reading.IsCompleted) _channel.Dispose();
        else _channel.CloseOutput();
        _process.Dispose();
    }

    /// <summary>Closes our end of the pipe, as it is closed when the workbench itself is ended.</summary>
    internal void ClosePipe() => _channel.CloseOutput();

    private async Task<CellEnding?> StopWhenDueAsync(RunningCell run, CancellationToken cancellationToken)
    {
        using var finished = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var due = Task.Delay(_limits.CellTime, finished.Token);
        var first = await Task.WhenAny(run.Ended, _gone, due).ConfigureAwait(false);
        if (first != due)
        {
            await finished.CancelAsync().ConfigureAwait(false);
            return null;
        }
        var reason = cancellationToken.IsCancellationRequested ? CellEnding.Cancelled : CellEnding.TimeLimit;
        Send(new CancelCell());
        await Task.WhenAny(run.Ended, _gone, Task.Delay(_limits.CancelGrace, CancellationToken.None)).ConfigureAwait(false);
        if (!run.Ended.IsCompleted) End(reason);
        return reason;
    }

    private async Task<CellResult> EndOf(RunningCell run, CellEnding? stopped, TimeSpan duration)
    {
        await Task.WhenAny(run.Ended, _gone).ConfigureAwait(false);
        if (run.Ended.IsCompletedSuccessfully)
        {
            var ended = await run.Ended.ConfigureAwait(false);
            if (ended.Ending == CellEnding.Completed) return new(CellEnding.Completed, run.Output.Gathered(), null, duration);
            var ending = stopped ?? ended.Ending;
            var fault = Departure.IsStop(ending) ? new CellFault(Departure.Describe(ending, _limits, null)) : ended.Fault;
            return new(ending, run.Output.Gathered(), fault ?? new CellFault("The cell failed without saying why."), duration);
        }
        var departure = await _gone.ConfigureAwait(false);
        return new(departure.Ending, run.Output.Gathered(), new CellFault(departure.Message(_limits)), duration);
    }

    private void Send(WireMessage message)
    {
        try
        {
            _channel.Write(message);
        }
        catch (Exception error) when (error is IOException or ObjectDisposedException)
        {
            // The process is gone: whoever waits for an answer learns it from _gone.
        }
    }

    private void End(CellEnding reason)
    {
        lock (_gate)
        {
            if (_gone?.IsCompleted == true) return;
            _endedFor ??= reason;
        }
        try
        {
            _process.Kill(entireProcessTree: true);
        }
        catch (Exception error) when (error is InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            // It ended by itself in the meantime.
        }
    }
}
