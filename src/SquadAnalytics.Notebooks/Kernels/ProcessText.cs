using System.Text;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>The beginning of what a process writes to one of its raw streams; the rest is read, counted and dropped.</summary>
internal sealed class ProcessText
{
    private const int Kept = 16 << 10;
    private readonly Lock _gate = new();
    private readonly StringBuilder _text = new();

    /// <summary>Starts reading.</summary>
    /// <param name="reader">The process's stream.</param>
    /// <param name="limit">How many characters may come.</param>
    /// <param name="onLimit">Called once, when more have come.</param>
    public ProcessText(StreamReader reader, long limit, Action onLimit) => Drained = DrainAsync(reader, limit, onLimit);

    /// <summary>Ends when the stream is closed.</summary>
    public Task Drained { get; }

    /// <summary>The text kept so far.</summary>
    public override string ToString()
    {
        lock (_gate) return _text.ToString();
    }

    private async Task DrainAsync(StreamReader reader, long limit, Action onLimit)
    {
        var buffer = new char[4096];
        long total = 0;
        while (await reader.ReadAsync(buffer).ConfigureAwait(false) is var read and > 0)
        {
            lock (_gate) _text.Append(buffer, 0, Math.Min(read, Kept - _text.Length));
            if (total <= limit && total + read > limit) onLimit();
            total += read;
        }
    }
}
