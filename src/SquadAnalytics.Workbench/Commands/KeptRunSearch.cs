using SquadAnalytics.Notebooks.Reports;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>Finds the kept run that a command names: a folder, the name of a run, or <c>latest</c>.</summary>
/// <param name="currentFolder">The folder in which the command was given.</param>
/// <param name="userFolder">The user's data folder.</param>
/// <param name="logbookFolder">A logbook that keeps runs too, or null.</param>
internal sealed class KeptRunSearch(string currentFolder, string userFolder, string? logbookFolder)
{
    /// <summary>The word for the newest run.</summary>
    public const string Latest = "latest";

    /// <summary>The run's folder.</summary>
    /// <exception cref="UsageException">There is none, or more than one.</exception>
    public string Find(string run)
    {
        var path = Path.GetFullPath(run, currentFolder);
        if (File.Exists(Path.Combine(path, KeptRun.RecordFile))) return path;
        if (File.Exists(path) && Path.GetFileName(path) is KeptRun.ReportFile or KeptRun.RecordFile && File.Exists(Path.Combine(Path.GetDirectoryName(path)!, KeptRun.RecordFile))) return Path.GetDirectoryName(path)!;
        var kept = Places().Where(Directory.Exists).SelectMany(Directory.EnumerateDirectories).Where(folder => File.Exists(Path.Combine(folder, KeptRun.RecordFile))).Distinct().ToList();
        if (run == Latest)
        {
            return kept.Select(folder => (Folder: folder, Started: KeptRun.StartedAt(folder))).Where(entry => entry.Started is not null).OrderByDescending(entry => entry.Started).Select(entry => entry.Folder).FirstOrDefault()
                ?? throw new UsageException($"No run is kept in {string.Join(", ", Places())}. Name its folder.");
        }

        var named = kept.Where(folder => Path.GetFileName(folder) == run).ToList();
        return named switch
        {
            [var only] => only,
            [] => throw new UsageException(Directory.Exists(path)
                ? $"The folder {run} holds no kept run: it has no {KeptRun.RecordFile}."
                : $"There is no kept run '{run}', neither as a folder nor in {string.Join(", ", Places())}.{Known(kept)}"),
            _ => throw new UsageException($"More than one kept run is called '{run}': {string.Join(", ", named)}. Name the folder."),
        };
    }

    private static string Known(IReadOnlyList<string> kept) => kept.Count == 0 ? "" : $" Kept are: {string.Join(", ", kept.Select(Path.GetFileName).Order(StringComparer.Ordinal).TakeLast(10))}.";

    private IEnumerable<string> Places()
    {
        yield return Path.Combine(currentFolder, "reports");
        yield return Path.Combine(userFolder, "SquadAnalytics", "reports");
        yield return Path.Combine(userFolder, "SquadAnalytics", "sample-squad", "reports");
        if (logbookFolder is not null) yield return Path.Combine(Path.GetFullPath(logbookFolder, currentFolder), "reports");
    }
}
