using System.Globalization;
using SquadAnalytics.Notebooks.Reports;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>Where a run is kept.</summary>
internal static class KeptRunFolder
{
    /// <summary>The folder that was named, if it can hold a run.</summary>
    /// <exception cref="UsageException">It holds something else.</exception>
    public static string Named(string folder) => KeptRun.CanHold(folder)
        ? Path.GetFullPath(folder)
        : throw new UsageException($"The folder {folder} holds something else: name a new folder, or one that holds a kept run.");

    /// <summary>
    /// A new folder <c>reports/NOTEBOOK-DATE-TIME</c> below the current one or, where that cannot be written, below the user's data folder.
    /// </summary>
    public static string New(string currentFolder, string userFolder, string notebook, DateTimeOffset now)
    {
        var parent = FirstWritable.Of(Path.Combine(currentFolder, "reports"), Path.Combine(userFolder, "SquadAnalytics", "reports"));
        var name = string.Create(CultureInfo.InvariantCulture, $"{notebook}-{now:yyyyMMdd-HHmmss}");
        var folder = Path.Combine(parent, name);
        for (var number = 2; Directory.Exists(folder); number++) folder = Path.Combine(parent, string.Create(CultureInfo.InvariantCulture, $"{name}-{number}"));
        return folder;
    }
}
