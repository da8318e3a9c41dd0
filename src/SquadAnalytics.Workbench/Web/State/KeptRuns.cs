using System.IO.Compression;
using System.Text.Json;
using SquadAnalytics.Notebooks.Reports;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Workbench.Commands;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>The runs that are kept in the logbook's folder of reports.</summary>
public sealed class KeptRuns(OpenLogbook opened, TimeProvider time)
{
    /// <summary>All kept runs, newest first. A folder whose record cannot be read is passed over.</summary>
    public IReadOnlyList<KeptRunEntry> All() => !Directory.Exists(opened.Logbook.ReportsFolder)
        ? []
        : [.. Directory.EnumerateDirectories(opened.Logbook.ReportsFolder).Select(Entry).OfType<KeptRunEntry>().OrderByDescending(run => run.Started)];

    /// <summary>Path of a run's report page, or null where there is none of that name.</summary>
    public string? ReportOf(string name) =>
        All().Any(run => run.Name == name) && Path.Combine(opened.Logbook.ReportsFolder, name, KeptRun.ReportFile) is var path && File.Exists(path) ? path : null;

    /// <summary>A kept run, or null where there is none of that name or it cannot be read.</summary>
    public NotebookRun? Read(string name)
    {
        try
        {
            return All().Any(run => run.Name == name) ? KeptRun.Read(Path.Combine(opened.Logbook.ReportsFolder, name)) : null;
        }
        catch (Exception error) when (error is IOException or FormatException or JsonException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Makes a kept run into one file that may leave the club, and notes in the logbook that it did.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="kind">What it becomes.</param>
    /// <returns>The file, several packed into one; null where there is no such run or it shows nothing of the kind.</returns>
    public ExportedFile? Export(string name, ExportKind kind)
    {
        if (Read(name) is not { } run) return null;
        var export = SharedExport.Of(run, kind, opened.Logbook, DateOnly.FromDateTime(time.GetLocalNow().DateTime));
        if (export.Files.Count == 0) return null;
        var word = kind.ToString().ToLowerInvariant();
        if (opened.Try(logbook => logbook.RecordExport($"{run.Name} as {word}", "a download in the browser", export.AthleteIds)) is not null) return null;
        return export.Files is [var only] ? only with { Name = $"{name}{Path.GetExtension(only.Name)}" } : new ExportedFile($"{name}-{word}.zip", Packed(export.Files));
    }

    /// <summary>Deletes a kept run.</summary>
    public string? Delete(string name) => opened.Try(logbook =>
    {
        if (All().Any(run => run.Name == name)) Directory.Delete(Path.Combine(logbook.ReportsFolder, name), recursive: true);
    });

    private static byte[] Packed(IReadOnlyList<ExportedFile> files)
    {
        using var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var file in files)
            {
                using var entry = archive.CreateEntry(file.Name).Open();
                entry.Write(file.Content.Span);
            }
        }

        return bytes.ToArray();
    }

    // afterSet: after set.
    private static string Words(string? name) => string.Concat((name ?? "").Select(letter => char.IsUpper(letter) ? $" {char.ToLowerInvariant(letter)}" : $"{letter}"));

    private static KeptRunEntry? Entry(string folder)
    {
        try
        {
            using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, KeptRun.RecordFile)));
            var record = document.RootElement;
            return new KeptRunEntry(
                Path.GetFileName(folder),
                record.GetProperty("title").GetString() ?? Path.GetFileName(folder),
                record.GetProperty("started").GetDateTimeOffset(),
                record.GetProperty("succeeded").GetBoolean(),
                record.GetProperty("dataFingerprint").GetString(),
                string.Join(", ", record.GetProperty("parameters").EnumerateArray().Select(parameter => $"{Words(parameter.GetProperty("name").GetString())} {parameter.GetProperty("value").GetString()}")));
        }
        catch (Exception error) when (error is IOException or JsonException or KeyNotFoundException or InvalidOperationException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
