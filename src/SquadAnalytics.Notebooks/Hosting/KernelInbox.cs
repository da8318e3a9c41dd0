using System.Diagnostics;
using System.Threading.Channels;
using SquadAnalytics.Notebooks.Wire;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>
/// Listens to the workbench on a thread of its own, so that a busy cell cannot keep the process from noticing that the workbench is
/// gone: then the process ends itself at once, without finalizers or handlers that a cell may have left behind.
/// </summary>
internal sealed class KernelInbox
{
    private readonly Channel<WireMessage> _messages = Channel.CreateUnbounded<WireMessage>();

    public KernelInbox(MessageChannel channel, Action onCancel, Action<OpenSession> onOpen)
    {
        var listener = new Thread(() => Listen(channel, onCancel, onOpen)) { IsBackground = true, Name = "Workbench" };
        listener.Start();
    }

    /// <summary>What is to be done, in order; cancelling is not among it, as it must overtake the rest.</summary>
    public IAsyncEnumerable<WireMessage> Messages => _messages.Reader.ReadAllAsync();

    private void Listen(MessageChannel channel, Action onCancel, Action<OpenSession> onOpen)
    {
        try
        {
            while (channel.Read() is { } message)
            {
                if (message is OpenSession open) onOpen(open);
                if (message is CancelCell) onCancel();
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
