using SquadAnalytics.Internals;
using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Storage;

public sealed partial class Logbook
{
    /// <summary>The most bytes that a restored logbook may have unless told otherwise: 4 GiB.</summary>
    public const long DefaultMostRestoredBytes = 4L << 30;

    /// <summary>Writes everything in the logbook's folder to one zip, health notes and kept reports included. The backup is noted among the exports.</summary>
    /// <param name="zip">The file to write, outside the logbook's folder; an existing one is replaced once the new one is complete.</param>
    /// <exception cref="ArgumentException">The file lies in the logbook's folder.</exception>
    /// <exception cref="LogbookNotWrittenException">Writing failed, for example on a full disk.</exception>
    public void Backup(string zip)
    {
        var path = Path.GetFullPath(Require.Text(zip));
        if (path.StartsWith(Folder + Path.DirectorySeparatorChar, StringComparison.Ordinal)) throw new ArgumentException($"A backup must lie outside the logbook's folder {Folder}, but was {path}.", nameof(zip));
        var part = path + ".part";
        try
        {
            using (var file = new FileStream(part, Disk.Owned(FileMode.Create, FileShare.None)))
            {
                Disk.Writing(part, () => Storage.Backup.Pack(_layout, file, _time.GetUtcNow()));
                file.Flush(flushToDisk: true);
            }

            _disk.Replace(part, path);
            _disk.Sync(Path.GetDirectoryName(path)!);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            if (File.Exists(part)) File.Delete(part);
            throw new LogbookNotWrittenException($"The backup was not written: {error.Message}", error);
        }

        if (!IsReadOnly) RecordExport("backup", path, []);
    }

    /// <summary>Makes a logbook from a backup.</summary>
    /// <param name="zip">The backup.</param>
    /// <param name="folder">A folder that is new or empty.</param>
    /// <param name="time">The clock for the times of accepts, or null for the system's.</param>
    /// <param name="mostBytes">The most bytes that the unpacked files may have together.</param>
    /// <returns>The restored logbook, opened.</returns>
    /// <exception cref="InvalidDataException">The zip is damaged, is no backup of a logbook, or unpacks to too much. Nothing is left of it.</exception>
    /// <exception cref="LogbookContentException">A table in it cannot be read. Nothing is left of it.</exception>
    /// <exception cref="IOException">The folder holds something already.</exception>
    public static Logbook Restore(string zip, string folder, TimeProvider? time = null, long mostBytes = DefaultMostRestoredBytes)
    {
        var target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(Require.Text(folder)));
        if (Directory.Exists(target) && Directory.EnumerateFileSystemEntries(target).Any()) throw new IOException($"Folder {target} is not empty. Name a new folder for the restored logbook.");
        var disk = new Disk();
        var beside = new Layout($"{target}.restoring-{Guid.NewGuid():N}");
        try
        {
            disk.CreateFolder(beside.Folder);
            Storage.Backup.Unpack(Path.GetFullPath(Require.Text(zip)), beside, disk, mostBytes);
            Open(beside.Folder, time, disk).Dispose();
            if (Directory.Exists(target)) Directory.Delete(target);
            disk.MoveFolder(beside.Folder, target);
            disk.Sync(Path.GetDirectoryName(target)!);
        }
        catch (DirectoryNotFoundException error)
        {
            throw new InvalidDataException($"{zip} is no backup of a logbook: it has no datapackage.json.", error);
        }
        finally
        {
            if (Directory.Exists(beside.Folder)) Directory.Delete(beside.Folder, recursive: true);
        }

        return Open(target, time);
    }
}
