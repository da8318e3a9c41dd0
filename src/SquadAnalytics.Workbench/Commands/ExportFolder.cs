using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>The folder that exported files go to: whole or not at all.</summary>
internal static class ExportFolder
{
    /// <summary>The folder that was named, if it is new or empty.</summary>
    /// <exception cref="UsageException">It is a file, or holds something.</exception>
    public static string Named(string folder)
    {
        if (File.Exists(folder)) throw new UsageException($"{folder} is a file: name a new folder with --out.");
        if (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()) throw new UsageException($"The folder {folder} is not empty: name a new folder with --out.");
        return Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
    }

    /// <summary>A new folder of a given name in <c>exports/</c>, here or, where that cannot be written, in the user's data folder.</summary>
    public static string New(string currentFolder, string userFolder, string name)
    {
        var parent = FirstWritable.Of(Path.Combine(currentFolder, "exports"), Path.Combine(userFolder, "SquadAnalytics", "exports"));
        var folder = Path.Combine(parent, name);
        for (var number = 2; Path.Exists(folder); number++) folder = Path.Combine(parent, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{name}-{number}"));
        return folder;
    }

    /// <summary>Writes the files beside the folder first; the folder gets its name when all of them are there.</summary>
    /// <param name="files">The files.</param>
    /// <param name="folder">The folder; new or empty.</param>
    /// <param name="beforeNaming">Done after everything is written and before the folder gets its name.</param>
    public static void Write(IReadOnlyList<ExportedFile> files, string folder, Action beforeNaming)
    {
        var partial = folder + ".partial";
        if (Directory.Exists(partial)) Directory.Delete(partial, recursive: true);
        Directory.CreateDirectory(partial);
        try
        {
            foreach (var file in files) File.WriteAllBytes(Path.Combine(partial, file.Name), file.Content.Span);
            beforeNaming();
            if (Directory.Exists(folder)) Directory.Delete(folder);
            Directory.Move(partial, folder);
        }
        catch (Exception error)
        {
            if (Directory.Exists(partial)) Directory.Delete(partial, recursive: true);

            // The runtime tells so that the system allows no file of this size.
            if (error is ArgumentOutOfRangeException) throw new IOException($"A file is too large for {Path.GetDirectoryName(folder)}.", error);
            throw;
        }
    }
}
