using System.Globalization;
using System.Text;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;

namespace SquadAnalytics.Notebooks.Reports;

/// <summary>
/// Keeps a finished run as a folder: <c>report.html</c>, <c>executed.ipynb</c>, each figure as <c>figures/figure-1.svg</c> and
/// <c>.png</c>, each table as <c>tables/table-1.csv</c>, and <c>run.json</c>, which says what was run, on what, and how it ended.
/// </summary>
public static partial class KeptRun
{
    /// <summary>The page.</summary>
    public const string ReportFile = "report.html";

    /// <summary>The notebook with its outputs.</summary>
    public const string NotebookFileName = "executed.ipynb";

    /// <summary>What was run, on what, and how it ended.</summary>
    public const string RecordFile = "run.json";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes the folder, whole or not at all; an earlier run kept in the same folder is replaced.</summary>
    /// <param name="run">The run.</param>
    /// <param name="folder">The folder; new, empty, or one that holds a kept run.</param>
    /// <returns>The path of the report.</returns>
    /// <exception cref="IOException">The folder holds something else, or cannot be written.</exception>
    public static string Write(NotebookRun run, string folder)
    {
        ArgumentNullException.ThrowIfNull(run);
        folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        if (!CanHold(folder)) throw new IOException($"The folder {folder} holds something else: name a new folder, or one that holds a kept run.");
        var partial = folder + ".partial";
        if (Directory.Exists(partial)) Directory.Delete(partial, recursive: true);
        Directory.CreateDirectory(partial);
        WriteFiles(run, partial);
        if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
        Directory.Move(partial, folder);
        return Path.Combine(folder, ReportFile);
    }

    /// <summary>Whether a folder is new, empty, or holds a kept run.</summary>
    /// <param name="folder">The folder.</param>
    public static bool CanHold(string folder) =>
        !Directory.Exists(folder) || File.Exists(Path.Combine(folder, RecordFile)) || !Directory.EnumerateFileSystemEntries(folder).Any();

    private static void WriteFiles(NotebookRun run, string folder)
    {
        var notebook = Task.Run(() => ExecutedNotebook(run));
        Save(folder, ReportFile, RunReport.Of(run).ToHtml());
        Save(folder, NotebookFileName, notebook.GetAwaiter().GetResult());
        var figures = new List<string>();
        var tables = new List<string>();
        foreach (var value in run.Cells.SelectMany(static cell => cell.Result.Outputs).OfType<ShownValue>())
        {
            if (value.Form(MimeTypes.Svg) is { } svg)
            {
                var name = string.Create(CultureInfo.InvariantCulture, $"figures/figure-{figures.Count + 1}");
                figures.Add(name + ".svg");
                Save(folder, name + ".svg", svg);
                if (Pixels(value) is { } bytes) File.WriteAllBytes(Path.Combine(folder, name + ".png"), bytes);
            }
            if (value.Form(MimeTypes.Csv) is { } csv)
            {
                tables.Add(string.Create(CultureInfo.InvariantCulture, $"tables/table-{tables.Count + 1}.csv"));
                Save(folder, tables[^1], csv);
            }
        }
        Save(folder, RecordFile, RunRecord.Of(run, figures, tables).ToJson());
    }

    /// <summary>The notebook's file with the outputs of the run.</summary>
    internal static string ExecutedNotebook(NotebookRun run)
    {
        var ran = run.Cells.ToDictionary(static cell => cell.Cell.Id, StringComparer.Ordinal);
        return NotebookFile.ToJson(run.Notebook, cell => ran.TryGetValue(cell.Id, out var one)
            ? new CellOutputs(one.WasExecuted ? one.Number : null, one.Result.Outputs, one.Result.Fault)
            : null);
    }

    private static void Save(string folder, string name, string text)
    {
        var path = Path.Combine(folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text, Utf8);
    }

    /// <summary>The picture that a value shows, or null where it shows none.</summary>
    internal static byte[]? Pixels(ShownValue value)
    {
        if (value.Form(MimeTypes.Png) is not { } base64) return null;
        var bytes = new byte[(base64.Length * 3 / 4) + 3];
        return Convert.TryFromBase64String(base64, bytes, out var written) ? bytes[..written] : null;
    }
}
