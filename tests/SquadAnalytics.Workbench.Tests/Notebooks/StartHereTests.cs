namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>The first notebook that anybody opens: it has to work on any squad, and say what is noise.</summary>
public sealed class StartHereTests(GeneratedLogbook second) : IClassFixture<GeneratedLogbook>
{
    private const string Notebook = "00-start-here";

    [Fact]
    public void The_first_answer_of_the_sample_is_that_the_change_is_not_clear()
    {
        var page = NotebookRun.Page(second.Work, Notebook);
        Assert.Contains("Not clear from these tests.", page, StringComparison.Ordinal);
        // Too little data is shown as an answer: three tests where four are needed.
        Assert.Contains("Not enough data for the late slow-down: needs 4", page.Replace('\u00A0', ' '), StringComparison.Ordinal);
        // The SQL cell lists the tests of the chosen boxer only, the first one included.
        Assert.Contains("2030-09-05", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_squad_and_boxer_can_be_chosen()
    {
        var code = second.Squad.Athlete(second.Truth.NoiseOnly.AthleteId).Code;
        var output = NotebookRun.Of(second.Work, Notebook, "--logbook", second.Folder, "--set", $"athlete={code}", "--set", $"protocol={second.Truth.Scenario.MainTest.Protocol.Id}");
        // This boxer's times are noise around one level.
        Assert.DoesNotContain("by a worthwhile amount", output, StringComparison.Ordinal);
        Assert.Contains("Test noise is about", output, StringComparison.Ordinal);
    }
}
