namespace SquadAnalytics.Tests.Storage;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("logbook-").FullName;

    public string Logbook => At("logbook");

    public string At(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
