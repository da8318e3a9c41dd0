using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>
/// Logbooks for the comparison of blocks: the second generated squad with its two blocks and a third pair that was chosen after looking; and the
/// sample's adults in two groups side by side, of which one is planted 5 % faster within its block.
/// </summary>
public sealed class BlockLogbooks : IDisposable
{
    private const double PlantedFactor = 0.95;
    private readonly string _root = Directory.CreateTempSubdirectory("squad-blocks-").FullName;

    /// <summary>Generates the squads and keeps them.</summary>
    public BlockLogbooks()
    {
        Second = SquadGenerator.Generate(Scenarios.Brackenholt);
        var (one, two) = (Second.Squad.Blocks[0], Second.Squad.Blocks[1]);
        SampleFolder.Save(Second with { Squad = WithBlocks(Second.Squad, Second.Squad.Sessions, [one, two, new TrainingBlock("picked", "Picked", two.From, two.To) { DefinedAfterData = true }]) }, SecondFolder);

        var sample = SquadGenerator.Generate(Scenarios.Quillmere);
        var protocol = sample.Truth.Scenario.MainTest.Protocol;
        var later = sample.Squad.Blocks[1];
        string[] adults = [.. sample.Squad.Athletes.Where(athlete => !athlete.IsJuniorOn(later.From)).Select(athlete => athlete.Id)];
        string[] faster = [.. adults.Where((_, index) => index % 2 == 0)];
        TrainingBlock Group(string id, string name, string[] members) => new(id, name, later.From, later.To) { Members = members };
        Session Planted(Session session) => session.Protocol.Key == protocol.Key && later.Covers(session.Date) && session.IsComplete && faster.Contains(session.AthleteId)
            ? Session.FromTimes(session.Id, session.AthleteId, session.Date, session.Protocol, [.. session.TimesSeconds.Select(time => Math.Round(PlantedFactor * time, 1))])
            : session;
        SampleFolder.Save(
            sample with { Squad = WithBlocks(sample.Squad, [.. sample.Squad.Sessions.Select(Planted)], [Group("usual", "Usual", [.. adults.Except(faster)]), Group("hills", "Hills", faster)]) },
            GroupsFolder);
    }

    /// <summary>The second squad with blocks <c>block-1</c>, <c>block-2</c>, and <c>picked</c>, the second one as if chosen after looking.</summary>
    public string SecondFolder => Path.Combine(_root, "second");

    /// <summary>The sample's adults in groups <c>usual</c> and <c>hills</c>, the latter planted 5 % faster.</summary>
    public string GroupsFolder => Path.Combine(_root, "groups");

    /// <summary>A folder for what the tests write.</summary>
    public string Work => _root;

    internal GeneratedSquad Second { get; }

    /// <inheritdoc />
    public void Dispose() => Directory.Delete(_root, recursive: true);

    /// <summary>The mean difference between the blocks that was built in, over athletes with two tests in each: expected totals without noise.</summary>
    internal static double TrueDifference(GeneratedSquad generated)
    {
        var (first, second) = (generated.Squad.Blocks[0], generated.Squad.Blocks[1]);
        var expected = generated.Truth.Sessions.ToDictionary(session => session.SessionId, session => session.ExpectedTotal.Value);
        var eligible = SessionSelection.Of(generated.Squad.Sessions, new SelectionOptions { Protocol = generated.Truth.Scenario.MainTest.Protocol }).GetOrThrow().Sessions;
        var differences = eligible.GroupBy(session => session.AthleteId, StringComparer.Ordinal)
            .Select(own => (First: own.Where(session => first.Covers(session.Date)).ToList(), Second: own.Where(session => second.Covers(session.Date)).ToList()))
            .Where(own => own is { First.Count: >= 2, Second.Count: >= 2 })
            .Select(own => own.Second.Average(session => expected[session.Id]) - own.First.Average(session => expected[session.Id]));
        return differences.Average();
    }

    private static Squad WithBlocks(Squad squad, IReadOnlyList<Session> sessions, IReadOnlyList<TrainingBlock> blocks) =>
        new(squad.Name, squad.Athletes, squad.Protocols, sessions) { Contexts = squad.Contexts, Events = squad.Events, Blocks = blocks };
}
