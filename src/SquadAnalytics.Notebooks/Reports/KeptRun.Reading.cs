using System.Globalization;
using System.Text.Json;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Parameters;
using SquadAnalytics.Notebooks.Running;

namespace SquadAnalytics.Notebooks.Reports;

public static partial class KeptRun
{
    /// <summary>Reads a kept run: the same run, whatever became of the notebook and the logbook since.</summary>
    /// <param name="folder">The folder.</param>
    /// <exception cref="IOException">The folder holds no kept run, or its files cannot be read.</exception>
    public static NotebookRun Read(string folder)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        if (!File.Exists(Path.Combine(folder, RecordFile))) throw new IOException($"There is no kept run in {folder}: it has no {RecordFile}.");
        var record = ReadRecord(Path.Combine(folder, RecordFile));
        var notebook = ReadNotebook(Path.Combine(folder, NotebookFileName), record);
        var cells = notebook.Cells.Where(static cell => cell.Kind == CellKind.Code).Zip(record.Cells, Cell).ToList();
        return new NotebookRun(record.Notebook, notebook, cells)
        {
            Parameters = [.. record.Parameters.Select(static parameter => new NotebookParameter(parameter.Name, ParameterType.Text, true, parameter.Value))],
            Findings = [.. record.Findings.Select(static finding => finding.ToFinding())],
            DataFingerprint = record.DataFingerprint,
            DataNote = record.DataNote,
            LogbookFolder = record.Logbook,
            Identity = record.Versions is [var library, var engine, var runtime] ? new KernelIdentity(engine, runtime, library) : null,
            Started = record.Started,
            Duration = TimeSpan.FromSeconds(record.Seconds),
            Obstacle = record.Succeeded || cells.Exists(static cell => cell.Failed) ? null : record.Problem,
        };
    }

    private static RunRecord ReadRecord(string path)
    {
        try
        {
            return RunRecord.FromJson(File.ReadAllText(path, Utf8));
        }
        catch (JsonException error)
        {
            throw new IOException($"The record {path} cannot be read: {error.Message}", error);
        }
    }

    private static Notebook ReadNotebook(string path, RunRecord record)
    {
        try
        {
            var notebook = NotebookFile.Read(path);
            var code = notebook.Cells.Count(static cell => cell.Kind == CellKind.Code);
            return code == record.Cells.Count
                ? notebook
                : throw new NotebookFormatException(string.Create(CultureInfo.InvariantCulture, $"{path} has {code} code cells, but {RecordFile} beside it tells of {record.Cells.Count}."));
        }
        catch (NotebookFormatException error)
        {
            throw new IOException($"The notebook of a kept run cannot be read: {error.Message}", error);
        }
    }

    /// <summary>When a kept run was started, or null where the folder holds none that can be read.</summary>
    /// <param name="folder">The folder.</param>
    public static DateTimeOffset? StartedAt(string folder)
    {
        try
        {
            return RunRecord.FromJson(File.ReadAllText(Path.Combine(folder, RecordFile), Utf8)).Started;
        }
        catch (Exception error) when (error is JsonException or IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static CellRun Cell(NotebookCell cell, RecordedCell recorded) => new(
        recorded.Number,
        cell,
        new CellResult(
            Enum.Parse<CellEnding>(recorded.Ending),
            CellOutputs.Read(cell),
            recorded.Fault ?? (recorded.Problem is { } problem ? new CellFault(problem) : null),
            TimeSpan.FromSeconds(recorded.Seconds)));
}
