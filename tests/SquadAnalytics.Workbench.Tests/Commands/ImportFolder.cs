using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Commands;

/// <summary>A folder of its own for one test, with a logbook of an invented squad in it.</summary>
internal sealed class ImportFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("squad-analytics-commands-");

    public ImportFolder()
    {
        using var logbook = Logbook.Create(LogbookPath, "Quay");
        logbook.Commit(new LogbookChange("squad")
        {
            Athletes = [new Athlete("a1", "Bo Lindqvist", "BL"), new Athlete("a2", "Zoë Brandér", "ZB")],
            Protocols = [new Protocol("quay-v1", "Quay circuit", [], 4, new Seconds(120))],
        });
    }

    public string Path => _folder.FullName;

    public string LogbookPath => System.IO.Path.Combine(Path, "logbook");

    public void Write(string name, string text) => File.WriteAllText(System.IO.Path.Combine(Path, name), text);

    public T Look<T>(Func<Logbook, T> look)
    {
        using var logbook = Logbook.Open(LogbookPath);
        return look(logbook);
    }

    public void Dispose() => _folder.Delete(true);
}
