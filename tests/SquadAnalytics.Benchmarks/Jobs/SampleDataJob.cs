using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Writes the sample squad that is kept with the sources.</summary>
internal sealed class SampleDataJob : Job
{
    /// <summary>The command as the sample's README gives it.</summary>
    public const string Command = "dotnet run --project tests/SquadAnalytics.Benchmarks -- sample-data --out sample-data/squad";

    public override string Name => "sample-data";

    public override string Summary => "Writes the invented sample squad as a logbook folder.";

    public override string Usage => "sample-data --out FOLDER";

    public override int Run(IReadOnlyList<string> arguments)
    {
        if (Option(arguments, "--out") is not { } folder)
        {
            Console.Error.WriteLine("Name the folder: " + Usage);
            return 2;
        }

        var generated = SquadGenerator.Generate(Scenarios.Quillmere);
        SampleFolder.Write(generated, folder, Command);
        Console.WriteLine($"{generated.Squad.Name}: {generated.Squad.Athletes.Count} boxers, {generated.Squad.Sessions.Count} sessions in {folder}");
        return 0;
    }
}
