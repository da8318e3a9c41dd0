using System.Globalization;
using SquadAnalytics.SampleSquad;
using SquadAnalytics.Workbench.Tests.Commands;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>The strength coach's question, asked as a user asks it. What is true of each boxer is built into the generated squads.</summary>
public sealed class WhyTheSlowdownTests(GeneratedLogbook second) : IClassFixture<GeneratedLogbook>
{
    private const string Notebook = "01-why-the-slowdown";
    private const string MoreThanDrift = "; more than a steady drift.";
    private const string NotMoreThanDrift = "; not clearly more than a steady drift.";

    [Fact]
    public void The_late_breaker_of_the_sample_slows_after_set_three_at_the_press_ups()
    {
        var run = Run();
        Assert.Contains("sets 4-6 took", run.Output, StringComparison.Ordinal);
        Assert.Contains("s longer than sets 1-3", run.Output, StringComparison.Ordinal);
        Assert.Contains(MoreThanDrift, run.Output, StringComparison.Ordinal);
        Assert.Contains(", press-ups took ", run.Output, StringComparison.Ordinal);
        Assert.Contains("s of rest after set 1", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_boxer_who_only_looks_worse_gets_no_break_and_no_worthwhile_change()
    {
        var run = Run("--set", "athlete=SMB");
        Assert.Contains(NotMoreThanDrift, run.Output, StringComparison.Ordinal);
        Assert.Contains("is spread over the stations", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("by a worthwhile amount.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_late_breaker_of_another_squad_is_found_in_another_protocol()
    {
        var breaker = second.Truth.LateBreaker;
        var story = (LateBreak)breaker.Story!;
        var protocol = second.Truth.Scenario.MainTest.Protocol;
        var run = Run(
            "--logbook", second.Folder,
            "--set", $"athlete={second.Squad.Athlete(breaker.AthleteId).Code}",
            "--set", $"protocol={protocol.Id}",
            "--set", string.Create(CultureInfo.InvariantCulture, $"afterSet={story.AfterSet}"));
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"sets {story.AfterSet + 1}-{protocol.Sets} took"), run.Output, StringComparison.Ordinal);
        Assert.Contains(MoreThanDrift, run.Output, StringComparison.Ordinal);
        Assert.Contains($", {story.Station} took ", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_boxer_with_one_test_gets_sentences_that_say_what_is_missing()
    {
        var run = CommandRun.In(second.Work, "run", Notebook, "--set", "athlete=J1", "--set", "protocol=six-five-junior", "--set", "afterSet=3", "--out", Path.Combine(second.Work, Guid.NewGuid().ToString("N")));
        Assert.Equal(0, run.ExitCode);
        Assert.DoesNotContain("NaN", run.Output, StringComparison.Ordinal);
    }

    private CommandRun Run(params string[] arguments)
    {
        var run = CommandRun.In(second.Work, ["run", Notebook, .. arguments, "--out", Path.Combine(second.Work, Guid.NewGuid().ToString("N"))]);
        Assert.True(run.ExitCode == 0, run.Errors + run.Output);
        return run;
    }
}
