using SquadAnalytics.SampleSquad;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Tests.Sample;

public class SampleFolderTests
{
    private const string Command = "dotnet run --project tests/SquadAnalytics.Benchmarks -- sample-data --out sample-data/squad";
    private static readonly string Committed = Path.Combine(AppContext.BaseDirectory, "SampleData");

    [Fact]
    public void The_sample_folder_is_byte_for_byte_what_the_generator_writes()
    {
        var again = Directory.CreateTempSubdirectory("squad-analytics-again-");
        try
        {
            SampleFolder.Write(SquadGenerator.Generate(Scenarios.Quillmere), again.FullName, Command);
            Assert.Equal(Names(again.FullName), Names(Committed));
            Assert.All(Names(Committed), name => Assert.True(
                File.ReadAllBytes(Path.Combine(Committed, name)).AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(again.FullName, name))),
                $"{name} is not what the generator writes. After a wanted change run: {Command}"));
        }
        finally
        {
            again.Delete(recursive: true);
        }
    }

    [Fact]
    public void The_sample_folder_opens_as_a_logbook_with_the_squad_that_was_generated()
    {
        var generated = SquadGenerator.Generate(Scenarios.Quillmere);
        using var logbook = Logbook.Open(Committed);
        Assert.Equal(generated.Squad.Name, logbook.Squad.Name);
        Assert.Equal(generated.Squad.Athletes.Select(athlete => athlete.DisplayName).Order(), logbook.Squad.Athletes.Select(athlete => athlete.DisplayName).Order());
        Assert.Equal(generated.Squad.Sessions.Select(Told), logbook.Squad.Sessions.Select(Told));
        Assert.Equal(generated.Squad.Contexts.ToHashSet(), logbook.Squad.Contexts.ToHashSet());
        Assert.Equal(generated.HealthNotes, logbook.HealthNotes);
        Assert.Empty(logbook.HeldRows);
    }

    [Fact]
    public void The_readme_says_that_all_is_invented_and_how_it_was_made()
    {
        var text = File.ReadAllText(Path.Combine(Committed, SampleFolder.ReadmeName));
        Assert.Contains("Everything in this folder is invented", text, StringComparison.Ordinal);
        Assert.Contains(Command, text, StringComparison.Ordinal);
    }

    private static string Told(Session session) =>
        $"{session.Id} {session.AthleteId} {session} {session.VoidReason} {string.Join(' ', session.Stations.OrderBy(station => (station.Set, station.Station)).Select(station => station.Work))}";

    private static IReadOnlyList<string> Names(string folder) => [.. Directory.EnumerateFiles(folder).Select(file => Path.GetFileName(file)).Where(name => name[0] != '.').Order(StringComparer.Ordinal)];
}
