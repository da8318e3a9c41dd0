using System.Globalization;
using SquadAnalytics.SampleSquad;

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
        Assert.Contains("sets 4-6 took", run, StringComparison.Ordinal);
        Assert.Contains("s longer than sets 1-3", run, StringComparison.Ordinal);
        Assert.Contains(MoreThanDrift, run, StringComparison.Ordinal);
        Assert.Contains(", press-ups took ", run, StringComparison.Ordinal);
        Assert.Contains("Slower from set 4 by 3.97 s a set: about 3.1 s of it a jump after set 3 and about 0.8 s a gradual drift; 67 % at press-ups in the 10 tests with station times.", run, StringComparison.Ordinal);
        Assert.Contains("late break after set 3; one station: press-ups", NotebookRun.Finding(run, "Supported: "), StringComparison.Ordinal);
        Assert.Contains("One test at fixed rest", NotebookRun.Finding(run, "Cannot tell: the clock's feedback"), StringComparison.Ordinal);
        Assert.Contains("s of rest after set 1", run, StringComparison.Ordinal);
    }

    [Fact]
    public void The_boxer_who_only_looks_worse_gets_no_break_and_no_worthwhile_change()
    {
        var run = Run("--set", "athlete=SMB");
        Assert.Contains(NotMoreThanDrift, run, StringComparison.Ordinal);
        Assert.Contains("is spread over the stations", run, StringComparison.Ordinal);
        Assert.DoesNotContain("by a worthwhile amount.", run, StringComparison.Ordinal);
        Assert.DoesNotContain("Supported: late break", run, StringComparison.Ordinal);
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
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"sets {story.AfterSet + 1}-{protocol.Sets} took"), run, StringComparison.Ordinal);
        Assert.Contains(MoreThanDrift, run, StringComparison.Ordinal);
        Assert.Contains($", {story.Station} took ", run, StringComparison.Ordinal);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"late break after set {story.AfterSet}; one station: {story.Station}"), NotebookRun.Finding(run, "Supported: "), StringComparison.Ordinal);
    }

    [Fact]
    public void A_boxer_with_few_tests_gets_sentences_that_say_what_is_missing()
    {
        // Three sessions of the long test, the first dropped while it is learnt.
        var run = Run("--set", "athlete=SMB", "--set", "protocol=long-four", "--set", "afterSet=2");
        Assert.Contains("Not enough data for the late slow-down: needs 4 ", run, StringComparison.Ordinal);
    }

    private string Run(params string[] arguments) => NotebookRun.Of(second.Work, Notebook, arguments);
}
