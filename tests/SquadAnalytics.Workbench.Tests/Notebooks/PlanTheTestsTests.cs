namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>How many more tests until we can tell. What the notebook says follows from the noise of the squad by formulas that R knows too.</summary>
public sealed class PlanTheTestsTests(GeneratedLogbook second) : IClassFixture<GeneratedLogbook>
{
    private const string Notebook = "06-plan-the-tests";

    [Fact]
    public void The_plan_of_the_sample_agrees_with_R()
    {
        var output = NotebookRun.Of(second.Work, Notebook);
        // R 4.2.2: 1 - pt(qt(.95, 214), 214, 3.6 / (3.91 * sqrt(1/3 + 1/30))) = 0.4486.
        Assert.Contains("held against the mean of 3 earlier tests, does not show with a chance of 80 % even after 30 further tests; the chance is then 45 %", NotebookRun.Finding(output, "A change of"), StringComparison.Ordinal);
        // R 4.2.2: 1 - pt(qt(.95, 214), 214, 3.6 / (3.91 * sqrt(2 / m))) = 0.783 for m = 14, 0.807 for m = 15.
        Assert.Contains("15 tests before and as many after would show it", NotebookRun.Finding(output, "A change of"), StringComparison.Ordinal);
        // R 4.2.2: 2 * pt(3.6 * sqrt(2) / 3.91, 214) - 1 = 0.806; (qt(.95, 214) * 3.91 / 3.6)^2 = 3.2.
        Assert.Contains("the mean of 2 tests is within 3.60 s of the true total with a chance of 81 %; for 90 % take 4", NotebookRun.Finding(output, "Test noise is"), StringComparison.Ordinal);
        // R 4.2.2, weights of both contrasts: d = log(1.015), s = 0.0126, m = 19: 0.875 to 0.895.
        Assert.Matches(@"about 0\.\d s a set, shows with a chance of (87|88|89|90) % from the 19 tests so far", NotebookRun.Finding(output, "A break of 1.5 %"));
        // R 4.2.2: uniroot of 1 - pt(qt(.95, 214), 214, d / (3.91 * sqrt(1/3 + 1/3))) = .8 gives 7.96.
        Assert.Matches(@"a change of 7\.9[5-8] s", NotebookRun.Finding(output, "With 3 further tests"));
        // R 4.2.2: power.t.test(n = 16, delta = 3.6, sd = sqrt(2 * 3.91^2 / n + 3.26^2), sig.level = .05, type = "one.sample", alternative = "one.sided")$power = 0.690 for n = 1, 0.854 for n = 2.
        Assert.Contains("after 2 tests per athlete in each block", NotebookRun.Finding(output, "A mean difference of 3.60 s"), StringComparison.Ordinal);
        // R 4.2.2: the same with power = .8 and four tests: delta = 2.786.
        Assert.Matches(@"a mean difference of 2\.(78|79) s", NotebookRun.Finding(output, "The planned block"));
    }

    [Fact]
    public void Another_squad_gets_a_plan_of_its_own()
    {
        var output = NotebookRun.Of(second.Work, Notebook,
            "--logbook", second.Folder, "--set", $"protocol={second.Truth.Scenario.MainTest.Protocol.Id}", "--set", $"athlete={second.Squad.Athlete(second.Truth.Improver.AthleteId).Code}",
            "--set", "shareOfBand=40", "--set", "furtherTests=4", "--set", "boxers=10");
        Assert.Contains("With 4 further tests a change of", output, StringComparison.Ordinal);
        Assert.Contains("after", NotebookRun.Finding(output, "as small as the smallest worthwhile one, 14.00 s, held against the mean of 3 earlier tests, shows with a chance of 80 %"), StringComparison.Ordinal);
        Assert.Contains("10 athletes with 4 tests each", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_boxer_without_enough_tests_is_told_so()
    {
        var output = NotebookRun.Of(second.Work, Notebook, "--set", "athlete=J1");
        Assert.Contains("Not enough data for", output, StringComparison.Ordinal);
    }
}
