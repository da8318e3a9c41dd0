using System.Diagnostics;
using SquadAnalytics.Notebooks.Wire;

namespace SquadAnalytics.Notebooks.Kernels;

/// <content>Listening to the process and keeping an eye on it.</content>
public sealed partial class KernelProcess
{
    private void Listen()
    {
        try
        {
            while (_channel.Read() is { } message) Handle(message);
        }
        catch (WireException)
        {
            // It does not speak our language any more, so nothing it does can be relied on.
            End(CellEnding.Crash);
        }
        catch (Exception error) when (error is IOException or ObjectDisposedException or OperationCanceledException)
        {
            // The pipe is closed: the process ends, or we end it.
        }
    }

    private void Handle(WireMessage message)
    {
        RunningCell? run;
        lock (_gate) run = _running;
        switch (message)
        {
            case KernelReady ready:
                _ready.TrySetResult(new KernelIdentity(ready.Engine, ready.Runtime, ready.Library));
                break;
            case SessionOpened opened:
                _opened.TrySetResult(opened);
                break;
            case CellPutOut put when run?.Ticket == put.Ticket:
                if (!run.Output.TryAdd(put.Output)) End(CellEnding.OutputLimit);
                break;
            case CellEnded ended when run?.Ticket == ended.Ticket:
                run.TryEnd(ended);
                break;
            case CodeAnswered answered:
                Take(answered);
                break;
            case ProcessExiting exiting:
                _exitAnnounced = exiting.Code;
                break;
            case CellPutOut or CellEnded:
                // Output of a cell that is over already, for example from a thread that it left running.
                break;
            default:
                throw new WireException($"A {message.GetType().Name} was not expected here.");
        }
    }

    private async Task<Departure> WatchAsync()
    {
        var exit = _process.WaitForExitAsync();
        while (await Task.WhenAny(exit, Task.Delay(WatchInterval)).ConfigureAwait(false) != exit)
        {
            if (ResidentBytes() > _limits.ResidentBytes) End(CellEnding.MemoryLimit);
        }
        // Its last words may still be in the pipes; a process that it started itself may hold them open for longer.
        await Task.WhenAny(Task.WhenAll(_reading, _standardOutput.Drained, _standardError.Drained), Task.Delay(LastWords)).ConfigureAwait(false);
        return Departure.Of(_endedFor, _exitAnnounced, _process.ExitCode, _standardError.ToString());
    }

    private long ResidentBytes()
    {
        try
        {
            _process.Refresh();
            return _process.WorkingSet64;
        }
        catch (InvalidOperationException)
        {
            return 0;
        }
    }

    private sealed class RunningCell(int ticket, OutputCollector output)
    {
        private readonly TaskCompletionSource<CellEnded> _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public int Ticket => ticket;

        public OutputCollector Output => output;

        public Task<CellEnded> Ended => _ended.Task;

        public void TryEnd(CellEnded ended) => _ended.TrySetResult(ended);
    }
}
