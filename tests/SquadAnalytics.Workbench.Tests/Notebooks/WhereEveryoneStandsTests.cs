using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>Where everyone stands. Who is truly fastest is built into the generated squads.</summary>
public sealed class WhereEveryoneStandsTests(GeneratedLogbook second) : IClassFixture<GeneratedLogbook>
{
    private const string Notebook = "05-where-everyone-stands";

    [Fact]
    public void The_fastest_of_the_sample_may_be_first_and_only_the_probable_change_of_band_is_announced()
    {
        var output = NotebookRun.Of(second.Work, Notebook);
        var sample = SquadGenerator.Generate(Scenarios.Quillmere);
        Assert.Contains(Fastest(sample.Squad, sample.Truth), First(output), StringComparison.Ordinal);
        // R 4.2.2 on the last total of YHA (367.4 s, band edge 360 s, typical error 3.91 s, 214 df): pt((367.4 - 360) / 3.91, 214) = 0.97.
        // Two tests in a row lie above the edge, but the level of three, 361.6 ± 3.7 s, reaches over it.
        var change = NotebookRun.Finding(output, "Change of band");
        Assert.Contains("2 tests in a row, the latest 367.4 s, in the slower band Anvil (chance 97 %), Hammer before; the level of the last 3 tests, 361.6 s, may lie in Hammer or Anvil", change, StringComparison.Ordinal);
        Assert.Contains("take the next test before acting on it", change, StringComparison.Ordinal);
        Assert.Contains("Hiroto Vellacorte", NotebookRun.Finding(output, "Without a recent test"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_fastest_of_another_squad_may_be_first()
    {
        var output = NotebookRun.Of(second.Work, Notebook, "--logbook", second.Folder, "--set", $"protocol={second.Truth.Scenario.MainTest.Protocol.Id}");
        Assert.Contains(Fastest(second.Squad, second.Truth), First(output), StringComparison.Ordinal);
    }

    [Fact]
    public void Juniors_are_neither_ranked_nor_named()
    {
        var output = NotebookRun.Of(second.Work, Notebook, "--set", "protocol=six-five-junior");
        Assert.Contains("Not ranked: 7 juniors.", output, StringComparison.Ordinal);
        Assert.Contains("Not enough data for ranks: needs 2 athletes, has 0 athletes.", output, StringComparison.Ordinal);
        var sample = SquadGenerator.Generate(Scenarios.Quillmere).Squad;
        foreach (var junior in sample.Athletes.Where(athlete => athlete.IsJuniorOn(sample.Sessions[^1].Date))) Assert.DoesNotContain(junior.DisplayName, output, StringComparison.Ordinal);
    }

    private static string First(string output) => output.Split('\n').First(line => line.Contains("is the fastest of those ranked", StringComparison.Ordinal) || line.Contains("may each be first", StringComparison.Ordinal));

    /// <summary>Who has the smallest mean of the last three totals without noise.</summary>
    private static string Fastest(Squad squad, SampleTruth truth)
    {
        var expected = truth.Sessions.ToDictionary(session => session.SessionId, session => session.ExpectedTotal.Value);
        var eligible = SessionSelection.Of(squad.Sessions, new SelectionOptions { Protocol = truth.Scenario.MainTest.Protocol }).GetOrThrow().Sessions;
        var last = squad.Sessions[^1].Date;
        var fastest = eligible.Where(session => session.Date >= last.AddDays(-56) && !(squad.Athlete(session.AthleteId).Left < last)).GroupBy(session => session.AthleteId, StringComparer.Ordinal)
            .MinBy(own => own.TakeLast(3).Average(session => expected[session.Id]))!.Key;
        return squad.Athlete(fastest).LabelOn(last);
    }
}
