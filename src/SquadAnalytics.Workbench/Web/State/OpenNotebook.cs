using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>
/// A notebook that is worked on: its process, what its cells put out, its values, and what was changed and not saved yet. All windows
/// share it, and it outlives each of them; the text being edited is a window's own until it is saved.
/// </summary>
/// <param name="name">Its name.</param>
/// <param name="path">Where it is saved.</param>
/// <param name="shippedPath">The file that came with the program, read where nothing was saved yet; null for a notebook of the logbook's own.</param>
/// <param name="session">Its process.</param>
public sealed class OpenNotebook(string name, string path, string? shippedPath, NotebookSession session) : IAsyncDisposable
{
    private static readonly TimeSpan BetweenDrawings = TimeSpan.FromMilliseconds(150);

    private readonly ConcurrentDictionary<string, CellProgress> _cells = new();
    private readonly ConcurrentDictionary<string, byte> _savedHere = new();
    private CancellationTokenSource? _queue;
    private IReadOnlyList<ScopeValue> _values = [];
    private long _drawn;

    /// <summary>Raised when something that all windows show has changed, on any thread.</summary>
    public event Action? Changed;

    /// <summary>Its name.</summary>
    public string Name => name;

    /// <summary>Where it is saved.</summary>
    public string SavedAs => path;

    /// <summary>Its process.</summary>
    public NotebookSession Session => session;

    /// <summary>Whether it came with the program and has not been saved in the logbook yet.</summary>
    public bool IsOriginal => shippedPath is not null && !File.Exists(path);

    /// <summary>What was changed in a window and not saved; null where nothing was.</summary>
    public UnsavedNotebook? Unsaved { get; private set; }

    /// <summary>The values in scope after the last cell; none where the process is gone.</summary>
    public IReadOnlyList<ScopeValue> Values => session.ProcessId is null ? [] : _values;

    /// <summary>Whether cells are running or waiting.</summary>
    public bool IsBusy => _queue is not null;

    /// <summary>Reads the file.</summary>
    public Notebook Read() => NotebookFile.Read(IsOriginal ? shippedPath! : path);

    /// <summary>What tells the saved file from any other: its SHA-256; null where nothing was saved yet.</summary>
    public string? Fingerprint()
    {
        try
        {
            return File.Exists(path) ? Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path))) : null;
        }
        catch (IOException)
        {
            // Somebody is writing it at this moment; the next look will tell.
            return null;
        }
    }

    /// <summary>Whether a state of the file was saved by a window of this workbench.</summary>
    public bool WasSavedHere(string? fingerprint) => fingerprint is not null && _savedHere.ContainsKey(fingerprint);

    /// <summary>How it stands with a cell: what it put out since the notebook was opened, and whether it runs.</summary>
    public CellProgress Progress(string id) => _cells.GetValueOrDefault(id, CellProgress.None);

    /// <summary>Remembers what was changed in a window, so that a reload loses nothing.</summary>
    public void Keep(UnsavedNotebook? unsaved) => Unsaved = unsaved;

    /// <summary>Saves a notebook with what its cells put out.</summary>
    /// <returns>The fingerprint of the saved file.</returns>
    public string? Save(Notebook notebook)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        NotebookFile.Write(notebook with { Cells = [.. notebook.Cells.Select(cell => Progress(cell.Id).Outputs is { } outputs ? cell with { Run = outputs } : cell)] }, path);
        Unsaved = null;
        var saved = Fingerprint();
        if (saved is not null) _savedHere[saved] = 0;
        Changed?.Invoke();
        return saved;
    }

    /// <summary>Forgets what the cells put out, in the saved file too once it is saved again.</summary>
    public void ClearOutputs(Notebook notebook)
    {
        foreach (var cell in notebook.Cells) _cells[cell.Id] = new(CellOutputs.None, CellPhase.Idle, null);
        Changed?.Invoke();
    }

    /// <summary>Runs cells one after the other and stops at the first that fails.</summary>
    /// <param name="cells">The cells, with their numbers.</param>
    /// <param name="ids">Their identifiers.</param>
    public async Task RunAsync(IReadOnlyList<CellCode> cells, IReadOnlyList<string> ids)
    {
        using var queue = new CancellationTokenSource();
        if (Interlocked.CompareExchange(ref _queue, queue, null) is not null) return;
        foreach (var id in ids) Set(id, Progress(id) with { Phase = CellPhase.Waiting });
        try
        {
            for (var index = 0; index < cells.Count && !queue.IsCancellationRequested; index++)
            {
                if (!await RunAsync(cells[index], ids[index])) break;
            }
        }
        finally
        {
            foreach (var id in ids.Where(id => Progress(id).Phase == CellPhase.Waiting)) Set(id, Progress(id) with { Phase = CellPhase.Idle });
            _queue = null;
        }

        _values = (await session.AskAsync(CodeQuestion.Values, new(0, NotebookFile.DefaultLanguage, ""))).Values;
        Changed?.Invoke();
    }

    /// <summary>Stops the running cell and lets the waiting ones be.</summary>
    public void Interrupt()
    {
        _queue?.Cancel();
        session.Interrupt();
    }

    /// <summary>Starts the process anew: all values are gone, what was put out stays.</summary>
    public async Task RestartAsync()
    {
        _queue?.Cancel();
        await session.RestartAsync();
        _values = [];
        Changed?.Invoke();
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        _queue?.Cancel();
        await session.DisposeAsync();
    }

    private async Task<bool> RunAsync(CellCode cell, string id)
    {
        var live = new OutputCollector(long.MaxValue, null);
        Set(id, new(CellOutputs.None, CellPhase.Running, null));
        try
        {
            var result = await session.RunAsync(cell, output =>
            {
                live.TryAdd(output);
                if (Stopwatch.GetElapsedTime(_drawn) < BetweenDrawings) return;
                _drawn = Stopwatch.GetTimestamp();
                Set(id, new(new(null, live.Gathered(), null), CellPhase.Running, null));
            });
            Set(id, new(new(session.Executions > 0 ? session.Executions : null, result.Outputs, result.Fault), CellPhase.Idle, result.Duration));
            return result.Ending == CellEnding.Completed;
        }
        catch (Exception error) when (error is KernelException or OperationCanceledException)
        {
            Set(id, new(new(null, [], new CellFault(error.Message)), CellPhase.Idle, null));
            return false;
        }
    }

    private void Set(string id, CellProgress progress)
    {
        _cells[id] = progress;
        Changed?.Invoke();
    }

    /// <summary>Its name and what becomes of it.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{name}: {session.State}");
}
