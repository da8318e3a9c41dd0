using System.Globalization;
using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Writes the sample squad that is kept with the sources.</summary>
internal sealed class SampleDataJob : Job
{
    /// <summary>The command as the sample's README gives it.</summary>
    public const string Command = "dotnet run --project tests/SquadAnalytics.Benchmarks -- sample-data --out sample-data/squad";

    public override string Name => "sample-data";

    public override string Summary => "Writes the invented sample squad, or a larger one, as a logbook folder.";

    public override string Usage => "sample-data --out FOLDER [--times N]";

    public override int Run(IReadOnlyList<string> arguments)
    {
        if (Option(arguments, "--out") is not { } folder)
        {
            Console.Error.WriteLine("Name the folder: " + Usage);
            return 2;
        }

        if (!int.TryParse(Option(arguments, "--times") ?? "1", NumberStyles.None, CultureInfo.InvariantCulture, out var times) || times is < 1 or > 100)
        {
            Console.Error.WriteLine("--times is a whole number from 1 to 100: how many times as many boxers.");
            return 2;
        }

        var generated = SquadGenerator.Generate(times == 1 ? Scenarios.Quillmere : Scenarios.Larger(times, Scenarios.QuillmereSeed));
        SampleFolder.Write(generated, folder, times == 1 ? Command : string.Create(CultureInfo.InvariantCulture, $"{Command} --times {times}"));
        Console.WriteLine($"{generated.Squad.Name}: {generated.Squad.Athletes.Count} boxers, {generated.Squad.Sessions.Count} sessions in {folder}");
        return 0;
    }
}
