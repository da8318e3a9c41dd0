using SquadAnalytics.Storage;

namespace SquadAnalytics.SampleSquad;

/// <summary>Writes a generated squad as a logbook folder to be kept with the sources.</summary>
public static class SampleFolder
{
    /// <summary>Name of the file that says that everything is invented, how it was made, and what is built in.</summary>
    public const string ReadmeName = "README.md";

    /// <summary>Writes the logbook's tables and the README into a folder; files of the same names are replaced.</summary>
    /// <param name="generated">The squad.</param>
    /// <param name="folder">The folder; made where it is not there.</param>
    /// <param name="command">The command that makes the folder, for the README.</param>
    public static void Write(GeneratedSquad generated, string folder, string command)
    {
        ArgumentNullException.ThrowIfNull(generated);
        var work = Directory.CreateTempSubdirectory("squad-analytics-sample-");
        try
        {
            // Only the tables belong in the sources: the lock and the state before the last accept are of this machine.
            var source = Path.Combine(work.FullName, "logbook");
            Save(generated, source);
            Directory.CreateDirectory(folder);
            foreach (var file in Directory.EnumerateFiles(source).Where(file => Path.GetExtension(file) is ".csv" or ".json"))
                File.WriteAllBytes(Path.Combine(folder, Path.GetFileName(file)), File.ReadAllBytes(file));
            File.WriteAllText(Path.Combine(folder, ReadmeName), SampleReadme.Of(generated, command));
        }
        finally
        {
            work.Delete(recursive: true);
        }
    }

    /// <summary>Makes a logbook of a generated squad in a new folder.</summary>
    /// <param name="generated">The squad.</param>
    /// <param name="folder">A folder that is new or empty.</param>
    public static void Save(GeneratedSquad generated, string folder)
    {
        ArgumentNullException.ThrowIfNull(generated);
        var squad = generated.Squad;
        using var logbook = Logbook.Create(folder, squad.Name);
        logbook.Commit(new LogbookChange("sample squad")
        {
            Athletes = squad.Athletes,
            Protocols = squad.Protocols,
            Sessions = squad.Sessions,
            Contexts = squad.Contexts,
            Events = squad.Events,
            Blocks = squad.Blocks,
            HealthNotes = generated.HealthNotes,
        });
    }
}
