using System.Diagnostics;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Parameters;

namespace SquadAnalytics.Notebooks.Running;

/// <summary>Runs a notebook from top to bottom in a process of its own, and stops at the first cell that fails.</summary>
/// <param name="kernels">Where the process comes from.</param>
/// <param name="time">The clock that dates the run.</param>
public sealed class NotebookRunner(KernelSource kernels, TimeProvider time)
{
    /// <summary>Lets the spare process practise a run that will probably be asked for, so that it is quick then.</summary>
    /// <param name="request">What will probably be run.</param>
    /// <exception cref="ParameterException">A chosen value does not fit its parameter.</exception>
    public void Practise(RunRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        kernels.Practise(request.WorkingFolder, request.LogbookFolder, Code(WithSettings(request).Notebook));
    }

    /// <summary>Runs it.</summary>
    /// <param name="request">What is to be run.</param>
    /// <param name="onCell">Told of each code cell when it is done; may be null.</param>
    /// <param name="cancellationToken">Stops the running cell and with it the run.</param>
    /// <exception cref="ParameterException">A chosen value does not fit its parameter.</exception>
    public async Task<NotebookRun> RunAsync(RunRequest request, Action<CellRun>? onCell = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        var clock = Stopwatch.StartNew();
        var started = time.GetLocalNow();
        var (notebook, parameters) = WithSettings(request);
        var cells = new List<CellRun>();
        ReadyKernel? kernel = null;
        string? obstacle = null;
        try
        {
            kernel = await kernels.TakeAsync(request.WorkingFolder, request.LogbookFolder, Code(notebook), cancellationToken).ConfigureAwait(false);
        }
        catch (KernelException error)
        {
            obstacle = error.Message;
        }
        await using var process = kernel?.Process;
        foreach (var cell in notebook.Cells.Where(static cell => cell.Kind == CellKind.Code))
        {
            var stopped = cells.Exists(static earlier => earlier.Failed);
            var run = new CellRun(cells.Count + 1, cell, await ResultAsync(stopped ? null : process, cell, cells.Count + 1, cancellationToken).ConfigureAwait(false));
            cells.Add(run);
            onCell?.Invoke(run);
        }
        if (obstacle is null && !cells.Exists(static cell => cell.WasExecuted)) obstacle = "The notebook has no code cell that could be run.";
        return new NotebookRun(request.Name, notebook, cells)
        {
            Parameters = parameters,
            Findings = FindingForm.ReadAll(cells),
            DataFingerprint = kernel?.DataFingerprint,
            LogbookFolder = request.LogbookFolder is { } logbook ? Path.GetFullPath(logbook) : null,
            DataNote = request.DataNote,
            Identity = kernel?.Identity,
            Started = started,
            Duration = clock.Elapsed,
            Obstacle = obstacle,
        };
    }

    /// <summary>The cells that are run, with their numbers among all code cells.</summary>
    private static List<CellCode> Code(Notebook notebook)
    {
        var cells = notebook.Cells.Where(static cell => cell.Kind == CellKind.Code).ToList();
        return [.. cells.Where(static cell => !cell.IsForOtherPrograms).Select(cell => new CellCode(cells.IndexOf(cell) + 1, cell.Language, cell.Source))];
    }

    private static async Task<CellResult> ResultAsync(KernelProcess? kernel, NotebookCell cell, int number, CancellationToken cancellationToken)
    {
        if (kernel is null) return new(CellEnding.NotRun, [], null, TimeSpan.Zero);
        if (cell.IsForOtherPrograms) return new(CellEnding.Skipped, [], null, TimeSpan.Zero);
        return await kernel.RunAsync(new CellCode(number, cell.Language, cell.Source), null, cancellationToken).ConfigureAwait(false);
    }

    private static (Notebook Notebook, IReadOnlyList<NotebookParameter> Parameters) WithSettings(RunRequest request)
    {
        var cell = request.Notebook.ParametersCell;
        var parameters = cell is null ? [] : ParametersCell.Read(cell.Source);
        foreach (var setting in request.Settings)
        {
            if (!parameters.Any(parameter => parameter.Name == setting.Name))
            {
                var known = parameters.Count == 0 ? "it has none" : "it has " + string.Join(", ", parameters.Select(static parameter => parameter.Name));
                throw new ParameterException($"{request.Name} has no parameter {setting.Name}: {known}.");
            }
            parameters = [.. parameters.Select(parameter => parameter.Name == setting.Name ? parameter.WithValue(setting.Value) : parameter)];
        }
        return cell is null ? (request.Notebook, parameters) : (request.Notebook.With(cell with { Source = ParametersCell.Write(cell.Source, parameters) }), parameters);
    }
}
