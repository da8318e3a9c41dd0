using System.IO.Compression;
using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Storage;

/// <summary>Packs a logbook into one zip and unpacks it again, trusting nothing in the zip.</summary>
internal static class Backup
{
    private const int MostEntries = 100_000;

    // Tables pack to about a tenth, an empty page to a hundredth; what unpacks to more than this is no backup of a logbook.
    private const long FreeBytes = 64L << 20;
    private const long MostRatio = 200;
    private const int BufferBytes = 81920;

    private static readonly string[] Folders = [Layout.DraftsName, Layout.ImportsName, Layout.ReportsName, Layout.NotebooksName, Layout.SetAsideName, Layout.PreviousName];

    // A link, to a file or to a folder, leads outside the logbook.
    private static readonly EnumerationOptions WithoutLinks = new() { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint, IgnoreInaccessible = false };

    public static void Pack(Layout layout, Stream target, DateTimeOffset at)
    {
        var tables = LogbookFiles.Read(layout);
        using var archive = new ZipArchive(target, ZipArchiveMode.Create, leaveOpen: true);
        foreach (var (name, content) in tables.Contents) Add(archive, name, at, new MemoryStream(content));
        foreach (var path in Folders.Select(layout.At).Where(Directory.Exists).SelectMany(folder => Directory.EnumerateFiles(folder, "*", WithoutLinks)).Order(StringComparer.Ordinal))
        {
            Add(archive, Path.GetRelativePath(layout.Folder, path).Replace(Path.DirectorySeparatorChar, '/'), at, new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete));
        }
    }

    public static void Unpack(string zip, Layout layout, Disk disk, long mostBytes)
    {
        using var source = new FileStream(zip, FileMode.Open, FileAccess.Read, FileShare.Read);
        using var archive = new ZipArchive(source, ZipArchiveMode.Read);
        if (archive.Entries.Count > MostEntries) throw new InvalidDataException($"{zip} holds {archive.Entries.Count} files, more than a backup may have ({MostEntries}).");
        var left = Math.Min(mostBytes, Math.Max(FreeBytes, MostRatio * source.Length));
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var entry in archive.Entries)
        {
            var name = entry.FullName;
            if (!Layout.Belongs(name, Folders)) throw new InvalidDataException($"{zip} is no backup of a logbook: '{name}' does not belong in one.");
            if (!seen.Add(name)) throw new InvalidDataException($"{zip} holds '{name}' twice.");
            var path = layout.At(name);
            disk.CreateFolder(Path.GetDirectoryName(path)!);
            using var packed = entry.Open();
            using var file = new FileStream(path, Disk.Owned(FileMode.CreateNew, FileShare.None));
            left = CopyAtMost(packed, file, left, zip);
            file.Flush(flushToDisk: true);
        }
    }

    private static long CopyAtMost(Stream from, Stream to, long left, string zip)
    {
        var buffer = new byte[BufferBytes];
        for (var read = from.Read(buffer); read > 0; read = from.Read(buffer))
        {
            left -= read;
            if (left < 0) throw new InvalidDataException($"{zip} unpacks to more than a backup of its size may hold. Nothing was restored.");
            to.Write(buffer, 0, read);
        }

        return left;
    }

    private static void Add(ZipArchive archive, string name, DateTimeOffset at, Stream content)
    {
        using (content)
        {
            var entry = archive.CreateEntry(name, CompressionLevel.Optimal);
            entry.LastWriteTime = at;
            using var packed = entry.Open();
            content.CopyTo(packed);
        }
    }
}
