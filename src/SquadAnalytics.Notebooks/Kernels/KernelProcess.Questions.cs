using System.Collections.Concurrent;
using SquadAnalytics.Notebooks.Wire;

namespace SquadAnalytics.Notebooks.Kernels;

/// <content>Asking about code that is being written.</content>
public sealed partial class KernelProcess
{
    // The compiler's first answer takes a second or two; whoever writes will not wait longer than this for any.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly ConcurrentDictionary<int, TaskCompletionSource<CodeAnswer>> _asked = new();
    private int _questions;

    /// <summary>Whether a cell is running.</summary>
    public bool IsRunning
    {
        get
        {
            lock (_gate) return _running is not null;
        }
    }

    /// <summary>Asks about code that is being written. While a cell runs the answer is empty, and comes at once.</summary>
    /// <param name="question">The question.</param>
    /// <param name="cell">The code.</param>
    /// <param name="place">Where in the code; of no matter for problems and values.</param>
    /// <param name="cancellationToken">Stops the waiting; the answer is then empty.</param>
    public async Task<CodeAnswer> AskAsync(CodeQuestion question, CellCode cell, CodePlace place = default, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(cell);
        if (IsRunning || !IsAlive) return CodeAnswer.Empty;
        var ticket = Interlocked.Increment(ref _questions);
        var answered = _asked[ticket] = new(TaskCreationOptions.RunContinuationsAsynchronously);
        try
        {
            Send(new AskAboutCode(ticket, question, cell.Language, cell.Source, place.Line, place.Column));
            var first = await Task.WhenAny(answered.Task, _gone, Task.Delay(Patience, cancellationToken)).ConfigureAwait(false);
            return first == answered.Task ? await answered.Task.ConfigureAwait(false) : CodeAnswer.Empty;
        }
        finally
        {
            _asked.TryRemove(ticket, out _);
        }
    }

    // An answer that nobody waits for any more is dropped.
    private void Take(CodeAnswered answered)
    {
        if (_asked.TryRemove(answered.Ticket, out var waiting)) waiting.TrySetResult(answered.Answer);
    }
}
