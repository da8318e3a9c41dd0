namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>The coach's weekly question. In the planted week one boxer alone is slower; in the sample nobody's last test is.</summary>
public sealed class ThisWeekTests(PlantedWeek planted) : IClassFixture<PlantedWeek>
{
    private const string Notebook = "02-this-week";

    [Fact]
    public void The_one_boxer_who_is_slower_is_singled_out_and_nobody_else()
    {
        var output = NotebookRun.Of(planted.Work, Notebook, "--logbook", planted.Folder, "--set", $"protocol={planted.Protocol.Id}");
        var name = planted.Slower.LabelOn(planted.Date);
        Assert.Contains($"{name} stands out once their number is allowed for", output, StringComparison.Ordinal);
        Assert.Contains("Slower by a worthwhile amount.", NotebookRun.Finding(output, $"{name}: "), StringComparison.Ordinal);
        Assert.Contains($"{name}: ", NotebookRun.Finding(output, "Worth a word"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_head_knock_without_clearance_takes_a_boxer_off_the_list_of_those_due()
    {
        var output = NotebookRun.Of(planted.Work, Notebook, "--logbook", planted.Folder, "--set", $"protocol={planted.Protocol.Id}");
        var knocked = planted.Knocked.LabelOn(planted.Date);
        Assert.Contains(knocked, NotebookRun.Finding(output, "Not due because of a head knock without clearance"), StringComparison.Ordinal);
        Assert.DoesNotContain("absent: " + knocked, output, StringComparison.Ordinal);
        Assert.Contains("until cleared by a licensed clinician", NotebookRun.Finding(output, "Worth a word"), StringComparison.Ordinal);
    }

    [Fact]
    public void In_the_sample_a_week_of_noise_stays_noise()
    {
        var output = NotebookRun.Of(planted.Work, Notebook);
        Assert.Contains("nobody's change stands out", output, StringComparison.Ordinal);
        Assert.Contains("with no true change anywhere about 1.5 would", NotebookRun.Finding(output, "nobody's change"), StringComparison.Ordinal);
        Assert.Contains("absent: Nkechi Varnhalm", output, StringComparison.Ordinal);
        Assert.Contains("That is no all-clear: ask Nkechi Varnhalm why they were absent.", NotebookRun.Finding(output, "No boxer meets the rules for a talk"), StringComparison.Ordinal);
    }

    [Fact]
    public void Who_has_no_test_this_week_is_called_absent_or_not_due()
    {
        // In the sample Nkechi Varnhalm missed the last test and Hiroto Vellacorte had left the squad.
        var page = NotebookRun.Page(planted.Work, Notebook);
        Assert.Contains("Not due, without this test in the eight weeks before or no longer in the squad: Hiroto Vellacorte.", page, StringComparison.Ordinal);
        Assert.Contains("no test this week", page, StringComparison.Ordinal);
        Assert.DoesNotContain("needs 1 eligible sessions", page, StringComparison.Ordinal);
        Assert.Contains("Nobody meets the rules for a talk", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_week_can_be_chosen_by_any_of_its_days()
    {
        // In the sample Piers Tamanoah had a knock on 16 November 2030 and was cleared on 2 December.
        var output = NotebookRun.Of(planted.Work, Notebook, "--set", "date=2030-11-19");
        Assert.Contains("Piers Tamanoah", NotebookRun.Finding(output, "Not due because of a head knock"), StringComparison.Ordinal);
        Assert.Contains("beyond test noise", NotebookRun.Finding(output, "New personal bests"), StringComparison.Ordinal);
    }
}
