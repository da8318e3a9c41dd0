using System.Globalization;
using System.Text.RegularExpressions;
using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>The question of the coach who compares two blocks. How much the blocks truly differ is built into the generated squads.</summary>
public sealed partial class TwoBlocksTests(BlockLogbooks logbooks) : IClassFixture<BlockLogbooks>
{
    private const string Notebook = "03-two-blocks";

    [Fact]
    public void In_the_sample_the_interval_holds_the_difference_that_was_built_in()
    {
        var output = NotebookRun.Of(logbooks.Work, Notebook);
        AssertHolds(BlockLogbooks.TrueDifference(SquadGenerator.Generate(Scenarios.Quillmere)), NotebookRun.Finding(output, "Hard repeats differed from Long rounds by"));
        Assert.Contains("faster by a worthwhile amount", NotebookRun.Finding(output, "Hard repeats differed from Long rounds by"), StringComparison.Ordinal);
        Assert.Contains("Order was not randomised.", output, StringComparison.Ordinal);
        Assert.Contains("The averages agree: ", output, StringComparison.Ordinal);
        // The jump beyond the trend reaches inside the smallest worthwhile change of 3.60 s.
        Assert.Contains("faster, size unclear", NotebookRun.Finding(output, "Allowing for the season's trend"), StringComparison.Ordinal);
        // The boxer whose times are only noise is the one who did not get faster.
        Assert.Contains("; not told apart from noise: Søren Mbalakwe.", NotebookRun.Finding(output, "faster beyond noise"), StringComparison.Ordinal);
        Assert.DoesNotContain("improved because", output, StringComparison.Ordinal);
    }

    [Fact]
    public void In_another_squad_too_and_the_order_in_which_blocks_are_named_does_not_matter()
    {
        var protocol = logbooks.Second.Truth.Scenario.MainTest.Protocol.Id;
        var output = NotebookRun.Of(logbooks.Work, Notebook, "--logbook", logbooks.SecondFolder, "--set", $"protocol={protocol}", "--set", "first=block-2", "--set", "second=block-1");
        var finding = NotebookRun.Finding(output, "Sharpening differed from Base by");
        AssertHolds(BlockLogbooks.TrueDifference(logbooks.Second), finding);
        Assert.Contains("The later block was named first", finding, StringComparison.Ordinal);
    }

    [Fact]
    public void Blocks_that_were_chosen_after_looking_say_so_first()
    {
        var protocol = logbooks.Second.Truth.Scenario.MainTest.Protocol.Id;
        var output = NotebookRun.Of(logbooks.Work, Notebook, "--logbook", logbooks.SecondFolder, "--set", $"protocol={protocol}", "--set", "second=picked");
        Assert.Contains("The blocks were chosen after the results were seen.", NotebookRun.Finding(output, "Picked differed from Base by"), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_two_groups_side_by_side_the_one_that_is_planted_faster_is_faster_and_the_words_stay_careful()
    {
        var output = NotebookRun.Of(logbooks.Work, Notebook, "--logbook", logbooks.GroupsFolder, "--set", "first=usual", "--set", "second=hills");
        var finding = NotebookRun.Finding(output, "Hills differed from Usual by");
        Assert.Contains("s faster after their blocks, at equal times before", finding, StringComparison.Ordinal);
        Assert.Contains("faster by a worthwhile amount", finding, StringComparison.Ordinal);
        Assert.Contains("not what the training did", finding, StringComparison.Ordinal);
        // Planted: 5 % of totals around 370 s.
        Assert.InRange(double.Parse(Size().Match(finding).Groups[1].Value, CultureInfo.InvariantCulture), 12, 25);
    }

    private static void AssertHolds(double truth, string finding)
    {
        var limits = Limits().Match(finding);
        Assert.True(limits.Success, finding);
        double Number(int group) => double.Parse(limits.Groups[group].Value.Replace('−', '-'), CultureInfo.InvariantCulture);
        Assert.InRange(truth, Number(1), Number(2));
    }

    [GeneratedRegex(@"interval (−?[\d.]+) to (−?[\d.]+) s")]
    private static partial Regex Limits();

    [GeneratedRegex(@"differed from Usual by ([\d.]+) s")]
    private static partial Regex Size();
}
