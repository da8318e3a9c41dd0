using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Tests.Storage;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
internal sealed class TempFolder : IDisposable
{
    // Memory-backed where there is such a place: flushing thousands of small files through to a real disk is slow, and no part of what is checked.
    private static readonly string Place = Directory.Exists("/dev/shm") ? "/dev/shm" : System.IO.Path.GetTempPath();

    public TempFolder() => Directory.CreateDirectory(Path);

    public string Path { get; } = System.IO.Path.Combine(Place, $"logbook-{Guid.NewGuid():N}");

    public string Logbook => At("logbook");

    public string At(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);

    /// <summary>Names and hashes of everything that a person sees in the folder.</summary>
    public static List<string> FilesOf(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(file => System.IO.Path.GetRelativePath(folder, file))
            .Where(name => !name.StartsWith('.'))
            .Order(StringComparer.Ordinal)
            .Select(name => $"{name} {Fingerprints.OfFile(System.IO.Path.Combine(folder, name))}")];

    public List<string> Files() => FilesOf(Logbook);
}
