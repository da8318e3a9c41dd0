using System.Text.Json;
using SquadAnalytics.Notebooks.Reports;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>The runs that are kept in the logbook's folder of reports.</summary>
public sealed class KeptRuns(OpenLogbook opened)
{
    /// <summary>All kept runs, newest first. A folder whose record cannot be read is passed over.</summary>
    public IReadOnlyList<KeptRunEntry> All() => !Directory.Exists(opened.Logbook.ReportsFolder)
        ? []
        : [.. Directory.EnumerateDirectories(opened.Logbook.ReportsFolder).Select(Read).OfType<KeptRunEntry>().OrderByDescending(run => run.Started)];

    /// <summary>Path of a run's report page, or null where there is none of that name.</summary>
    public string? ReportOf(string name) =>
        All().Any(run => run.Name == name) && Path.Combine(opened.Logbook.ReportsFolder, name, KeptRun.ReportFile) is var path && File.Exists(path) ? path : null;

    /// <summary>Deletes a kept run.</summary>
    public string? Delete(string name) => opened.Try(logbook =>
    {
        if (All().Any(run => run.Name == name)) Directory.Delete(Path.Combine(logbook.ReportsFolder, name), recursive: true);
    });

    private static KeptRunEntry? Read(string folder)
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
                string.Join(", ", record.GetProperty("parameters").EnumerateArray().Select(parameter => $"{parameter.GetProperty("name").GetString()} {parameter.GetProperty("value").GetString()}")));
        }
        catch (Exception error) when (error is IOException or JsonException or KeyNotFoundException or InvalidOperationException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
