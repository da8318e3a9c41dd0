using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Storage.Safekeeping;

/// <summary>The bytes of all tables at one moment, as on disk.</summary>
/// <param name="Contents">Bytes by file name; a file that is missing is absent.</param>
/// <param name="Hashes">SHA-256 by file name.</param>
internal sealed record LogbookFiles(IReadOnlyDictionary<string, byte[]> Contents, IReadOnlyDictionary<string, string> Hashes)
{
    private const int Attempts = 50;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    /// <summary>Reads all tables; where another program commits meanwhile, again until they belong together.</summary>
    /// <remarks>A committed change that is not finished, in a folder that cannot be written, is read as if it were.</remarks>
    public static LogbookFiles Read(Layout layout)
    {
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            try
            {
                var mark = Mark(layout);
                var before = Stamps(layout);
                var contents = Contents(layout, mark);
                if (Mark(layout)?.At == mark?.At && Stamps(layout).SequenceEqual(before)) return new LogbookFiles(contents, contents.ToDictionary(pair => pair.Key, pair => Fingerprints.Of(pair.Value), StringComparer.Ordinal));
            }
            catch (Exception error) when (error is FileNotFoundException or DirectoryNotFoundException)
            {
                // The writer has just moved what was about to be read.
            }

            Thread.Sleep(Pause);
        }

        throw new IOException($"The logbook in {layout.Folder} keeps changing while it is read. Try again.");

        static Dictionary<string, byte[]> Contents(Layout layout, WriteAheadRecord? mark)
        {
            var contents = new Dictionary<string, byte[]>(StringComparer.Ordinal);
            foreach (var file in LogbookTables.Files)
            {
                var pending = Layout.Within(layout.PendingNew, file);
                var path = mark is not null && File.Exists(pending) ? pending : layout.At(file);
                if (File.Exists(path)) contents[file] = File.ReadAllBytes(path);
            }

            return contents;
        }
    }

    private static WriteAheadRecord? Mark(Layout layout) => File.Exists(layout.CommitMark) ? WriteAheadRecord.FromFile(layout.CommitMark) : null;

    private static List<(long Length, DateTime Written)> Stamps(Layout layout) =>
        [.. LogbookTables.Files.Select(file => new FileInfo(layout.At(file))).Select(info => info.Exists ? (info.Length, info.LastWriteTimeUtc) : (-1L, default))];
}
