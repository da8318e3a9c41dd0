using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Commands;

/// <summary>What is printed: handouts and recording sheets.</summary>
public sealed class PaperCommandTests : IDisposable
{
    private readonly ImportFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("C")]
    [InlineData("de_DE.UTF-8")]
    [InlineData("tr_TR.UTF-8")]
    public void A_sheet_filled_in_is_added_without_a_decision_whatever_the_machine_speaks(string language)
    {
        var made = CommandRun.In(_folder.Path, language, ["sheet", "--logbook", "logbook", "--date", "2031-04-03", "--out", "paper"]);
        Assert.Equal((0, ""), (made.ExitCode, made.Errors));
        Assert.StartsWith("Sheet ", made.Output, StringComparison.Ordinal);
        Assert.Equal(["sheet-quay-v1-20310403.csv", "sheet-quay-v1-20310403.html", "sheet-quay-v1-20310403.xlsx"], Directory.GetFiles(Path.Combine(_folder.Path, "paper")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        var empty = Path.Combine(_folder.Path, "paper", "sheet-quay-v1-20310403.csv");
        _folder.Write("filled.csv", File.ReadAllText(empty).Replace(",,,,", ",62.4,63.1,1:04,65", StringComparison.Ordinal));
        var added = CommandRun.In(_folder.Path, language, ["add", "filled.csv", "--logbook", "logbook"]);
        Assert.Equal(0, added.ExitCode);
        Assert.Contains("sessions added: 2, of 2031-04-03 to 2031-04-03", added.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_is_not_cleared_is_told_to_the_coach_and_not_on_the_sheet()
    {
        using (var logbook = Logbook.Open(_folder.LogbookPath)) logbook.Commit(new LogbookChange("knock") { Events = [new AthleteEvent("e1", "a1", new DateOnly(2031, 4, 1), EventKind.HeadKnock)] });
        var made = CommandRun.In(_folder.Path, "sheet", "--logbook", "logbook", "--date", "2031-04-03", "--out", "paper");
        Assert.Equal(0, made.ExitCode);
        Assert.Contains("Not listed: Bo Lindqvist (BL)", made.Errors, StringComparison.Ordinal);
        Assert.All(Directory.GetFiles(Path.Combine(_folder.Path, "paper"), "*.?*ml").Concat(Directory.GetFiles(Path.Combine(_folder.Path, "paper"), "*.csv")), file => Assert.DoesNotContain("Lindqvist", File.ReadAllText(file), StringComparison.Ordinal));
    }

    [Fact]
    public void A_handout_is_one_page_of_one_boxer_and_is_listed_in_the_logbook()
    {
        AddTests();
        var made = CommandRun.In(_folder.Path, "handout", "BL", "--logbook", "logbook");
        Assert.Equal((0, ""), (made.ExitCode, made.Errors));
        var file = Path.Combine(_folder.Path, "exports", "handout-BL", "handout-BL.html");
        Assert.Equal($"Handout: {file}{Environment.NewLine}", made.Output);
        Assert.DoesNotContain("Brandér", File.ReadAllText(file), StringComparison.Ordinal);
        var listed = Assert.Single(_folder.Look(logbook => logbook.Exports));
        Assert.Equal(("handout", "a1"), (listed.Kind, Assert.Single(listed.AthleteIds)));
    }

    [Theory]
    [InlineData("handout", "Name the boxer")]
    [InlineData("handout BL ZB --logbook logbook", "one too many")]
    [InlineData("handout Nobody --logbook logbook", "Nobody in the squad answers to 'Nobody'")]
    [InlineData("handout BL --logbook logbook --protocol nothing", "There is no protocol 'nothing'")]
    [InlineData("handout BL --logbook nowhere", "There is no logbook")]
    [InlineData("handout BL --logbook logbook --out logbook", "is not empty")]
    [InlineData("sheet", "Name the protocol with --protocol: six-five")]
    [InlineData("sheet --logbook logbook extra", "is no option")]
    [InlineData("sheet --logbook logbook --date 3.4.31", "write it as 2031-03-04")]
    [InlineData("sheet --logbook logbook --date 1999-12-31", "A sheet's date lies between")]
    [InlineData("sheet --logbook logbook --heat-size 0", "from 1 to 100")]
    [InlineData("sheet --logbook logbook --stations", "lists no stations")]
    [InlineData("sheet --logbook logbook --group nobody", "Nobody is in the group")]
    [InlineData("sheet --logbook logbook --colour red", "There is no option --colour")]
    public void Wrong_usage_exits_with_two_and_says_what_is_wrong(string arguments, string reason)
    {
        var result = CommandRun.In(_folder.Path, "C", arguments.Split(' '));
        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.Contains(reason, result.Errors, StringComparison.Ordinal);
        Assert.Equal(["logbook"], Directory.GetFileSystemEntries(_folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void A_boxer_without_a_test_gets_a_sentence_and_exit_code_one()
    {
        var result = CommandRun.In(_folder.Path, "handout", "BL", "--logbook", "logbook");
        Assert.Equal(1, result.ExitCode);
        Assert.StartsWith("Not enough data for the handout", result.Errors, StringComparison.Ordinal);
        Assert.Equal(["logbook"], Directory.GetFileSystemEntries(_folder.Path).Select(Path.GetFileName));
    }

    private void AddTests()
    {
        _folder.Write("tests.csv", "Quay circuit, 2031-03-06\nname,set 1,set 2,set 3,set 4\nBL,62.4,63.1,64,65\nZB,60,61,62,63\n");
        Assert.Equal(0, CommandRun.In(_folder.Path, "add", "tests.csv", "--logbook", "logbook").ExitCode);
    }
}
