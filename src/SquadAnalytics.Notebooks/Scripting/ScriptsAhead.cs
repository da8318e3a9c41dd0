using Microsoft.CodeAnalysis.Scripting;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Scripting;

/// <summary>
/// Compiles cells that are known to come, each after the one before it, on a thread of its own while earlier ones run. Where another cell
/// comes, or one that is not C#, what was compiled is forgotten and cells are compiled as they come.
/// </summary>
internal sealed class ScriptsAhead(ScriptSetup setup)
{
    private readonly Lock _gate = new();
    private Queue<Prepared> _coming = new();
    private string _folder = "";

    /// <summary>Begins to compile, and returns at once; what is being compiled already goes on where it is the same.</summary>
    /// <param name="after">What ran last.</param>
    /// <param name="folder">The folder in which the cells will run.</param>
    /// <param name="cells">The cells in their order.</param>
    public void Prepare(Script<object> after, string folder, IReadOnlyList<CellCode> cells)
    {
        lock (_gate)
        {
            if (_folder == folder && _coming.Select(static prepared => prepared.Cell).SequenceEqual(cells)) return;
            _folder = folder;
            var coming = _coming = new([.. cells.Select(static cell => new Prepared(cell))]);
            Prepared[] inOrder = [.. coming];
            new Thread(() => Compile(after, folder, inOrder, coming)) { IsBackground = true, Name = nameof(ScriptsAhead) }.Start();
        }
    }

    /// <summary>The compiled cell, once it is; null where it was not expected next or is not C#.</summary>
    /// <param name="after">What ran last.</param>
    /// <param name="folder">The folder in which it is to run.</param>
    /// <param name="cell">The cell.</param>
    /// <param name="cancellationToken">Stops the waiting.</param>
    public async Task<Script<object>?> TakeAsync(Script after, string folder, CellCode cell, CancellationToken cancellationToken)
    {
        Prepared? prepared;
        lock (_gate)
        {
            if (!_coming.TryDequeue(out prepared)) return null;
            if (prepared.Cell != cell || folder != _folder)
            {
                _coming = new();
                return null;
            }
        }

        var script = await prepared.Script.Task.WaitAsync(cancellationToken).ConfigureAwait(false);
        if (script?.Previous == after) return script;
        lock (_gate) _coming = new();
        return null;
    }

    private void Compile(Script<object> after, string folder, Prepared[] cells, Queue<Prepared> coming)
    {
        Script<object>? last = after;
        foreach (var prepared in cells)
        {
            last = IsWanted(coming) ? Compiled(last, folder, prepared.Cell) : null;
            prepared.Script.SetResult(last);
        }
    }

    private bool IsWanted(Queue<Prepared> coming)
    {
        lock (_gate) return ReferenceEquals(coming, _coming);
    }

    private Script<object>? Compiled(Script<object>? after, string folder, CellCode cell)
    {
        try
        {
            var script = after?.ContinueWith(cell.Source, setup.For(cell.Number, folder));
            script?.CreateDelegate();
            return script;
        }
        catch (CompilationErrorException)
        {
            // Whoever runs it is told.
            return null;
        }
    }

    private sealed record Prepared(CellCode Cell)
    {
        public TaskCompletionSource<Script<object>?> Script { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }
}
