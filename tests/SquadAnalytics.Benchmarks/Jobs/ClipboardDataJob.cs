using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Writes the messy clipboard files that are kept with the sources.</summary>
internal sealed class ClipboardDataJob : Job
{
    private const string Command = "dotnet run --project tests/SquadAnalytics.Benchmarks -- clipboard-data --out sample-data/clipboard";

    public override string Name => "clipboard-data";

    public override string Summary => "Writes the messy clipboard files of the invented club.";

    public override string Usage => "clipboard-data --out FOLDER";

    public override int Run(IReadOnlyList<string> arguments)
    {
        if (Option(arguments, "--out") is not { } folder)
        {
            Console.Error.WriteLine("Name the folder: " + Usage);
            return 2;
        }

        ClipboardFiles.Write(folder, Command);
        Console.WriteLine($"{ClipboardFiles.All.Count} files in {folder}");
        return 0;
    }
}
