using System.Diagnostics;
using System.Threading.Channels;
using SquadAnalytics.Notebooks.Wire;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>
/// Listens to the workbench on a thread of its own, so that a busy cell cannot keep the process from noticing that the workbench is
/// gone: then the process ends itself at once, without finalizers or handlers that a cell may have left behind.
/// </summary>
internal sealed class KernelInbox
{
    private readonly Channel<WireMessage> _messages = Channel.CreateUnbounded<WireMessage>();

    public KernelInbox(MessageChannel channel)
    {
        var listener = new Thread(() => Listen(channel)) { IsBackground = true, Name = "Workbench" };
        listener.Start();
    }

    /// <summary>What is done at once when the running cell is to be cancelled.</summary>
    public Action? OnCancel { get; set; }

    /// <summary>The logbook that the workbench named, which is being read while the engine is still being made; null before that.</summary>
    public Task<Logbook>? Opening { get; private set; }

    /// <summary>What is to be done, in order; cancelling is not among it, as it must overtake the rest.</summary>
    public IAsyncEnumerable<WireMessage> Messages => _messages.Reader.ReadAllAsync();

    private void Listen(MessageChannel channel)
    {
        try
        {
            while (channel.Read() is { } message)
            {
                if (message is OpenSession { LogbookFolder: { } folder }) Opening = Task.Run(() => Logbook.Open(folder));
                if (message is CancelCell) OnCancel?.Invoke();
                else _messages.Writer.TryWrite(message);
            }
        }
        catch (IOException)
        {
            // A broken conversation ends the process like a finished one.
        }
        finally
        {
            Process.GetCurrentProcess().Kill();
        }
    }
}
