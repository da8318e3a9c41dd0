using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Commands;

public sealed class AddCommandTests
{
    private const string April = "Athlete;Date;Set 1;Set 2;Set 3;Set 4\nBo Lindqvist;2031-04-03;62.4;63.1;64;69\nzoe brander;2031-04-03;70;71;72;73\nBo Lindqvist;2031-04-10;1:72;63;64;65\n";

    [Fact]
    public void Good_rows_are_kept_and_the_others_are_held_where_they_can_be_seen()
    {
        using var folder = new ImportFolder();
        Directory.CreateDirectory(Path.Combine(folder.Path, "drop"));
        folder.Write("drop/april.csv", April);
        var run = CommandRun.In(folder.Path, "add", "drop/april.csv", "--logbook", "logbook");
        Assert.Equal((1, ""), (run.ExitCode, run.Errors));
        Assert.Contains("sessions added: 1, of 2031-04-03 to 2031-04-03", run.Output, StringComparison.Ordinal);
        Assert.Contains("rows held in the logbook until they are mended, decided or dismissed: 2", run.Output, StringComparison.Ordinal);
        var held = folder.Look(logbook => logbook.HeldRows);
        Assert.Equal([HeldRowState.Refused, HeldRowState.AwaitingDecision], held.OrderByDescending(row => row.State).Select(row => row.State));
        Assert.Equal("1:72", held.Single(row => row.State == HeldRowState.Refused).Problems.Single().Text);
        Assert.Equal(["name:zoe brander"], held.Single(row => row.State == HeldRowState.AwaitingDecision).DecisionIds);
        Assert.Equal("62.4 63.1 64.0 69.0", folder.Look(logbook => string.Join(' ', logbook.Squad.Sessions.Single().TimesSeconds.Select(time => time.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)))));
    }

    [Fact]
    public void Answers_and_a_mended_file_finish_what_was_held_without_adding_anything_twice()
    {
        using var folder = new ImportFolder();
        folder.Write("april.csv", April);
        CommandRun.In(folder.Path, "add", "april.csv", "--logbook", "logbook");
        folder.Write("april.csv", April.Replace("1:72", "1:02", StringComparison.Ordinal));
        folder.Write("answers.json", """{ "name:zoe brander": "Zoë Brandér [ZB]" }""");
        var run = CommandRun.In(folder.Path, "add", "april.csv", "--logbook", "logbook", "--answers", "answers.json");
        Assert.Equal((0, ""), (run.ExitCode, run.Errors));
        Assert.Empty(folder.Look(logbook => logbook.HeldRows));
        Assert.Equal(3, folder.Look(logbook => logbook.Squad.Sessions.Count));
        Assert.Equal(["zoe brander"], folder.Look(logbook => logbook.Squad.Athlete("ZB").Aliases));

        var again = CommandRun.In(folder.Path, "add", "april.csv", "--logbook", "logbook");
        Assert.Equal(0, again.ExitCode);
        Assert.Contains("Quay: nothing new.", again.Output, StringComparison.Ordinal);
        Assert.Equal(3, folder.Look(logbook => logbook.Squad.Sessions.Count));
    }

    [Fact]
    public void Options_say_what_the_file_does_not()
    {
        using var folder = new ImportFolder();
        folder.Write("clock.csv", "Name;1;2;3;4\nBL;62,5;183;304;429\n");
        var run = CommandRun.In(folder.Path, "add", "clock.csv", "--logbook", "logbook", "--date", "2031-04-03", "--decimal", "comma", "--times", "clock", "--protocol", "quay-v1");
        Assert.Equal((0, ""), (run.ExitCode, run.Errors));
        Assert.Equal([62.5, 63, 64, 69], folder.Look(logbook => logbook.Squad.Sessions.Single().TimesSeconds));
    }

    [Theory]
    [InlineData("{ \"name:zoe brander\": \"somebody\" }")]
    [InlineData("[]")]
    [InlineData("{")]
    [InlineData("{ \"name:zoe brander\": 3 }")]
    public void Answers_that_cannot_be_understood_change_nothing(string answers)
    {
        using var folder = new ImportFolder();
        folder.Write("april.csv", April);
        folder.Write("answers.json", answers);
        var run = CommandRun.In(folder.Path, "add", "april.csv", "--logbook", "logbook", "--answers", "answers.json");
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(folder.Look(logbook => logbook.Squad.Sessions));
    }

    [Fact]
    public void A_logbook_that_another_program_writes_is_left_alone()
    {
        using var folder = new ImportFolder();
        folder.Write("april.csv", April);
        using var other = Logbook.Open(folder.LogbookPath);
        var run = CommandRun.In(folder.Path, "add", "april.csv", "--logbook", "logbook");
        Assert.Equal((1, ""), (run.ExitCode, run.Output));
        Assert.Contains("Nothing was changed", run.Errors, StringComparison.Ordinal);
    }
}
