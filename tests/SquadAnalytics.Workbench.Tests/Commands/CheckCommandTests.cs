using System.Text.Json;

namespace SquadAnalytics.Workbench.Tests.Commands;

public sealed class CheckCommandTests
{
    private const string Messy = "Name;Date;Set 1;Set 2;Set 3\nAda Novák;2031-03-04;62.4;63.1;64\nBen Oak;2031-03-04;1:72;62s4;64\nCy Elm;04/03/2031;62;63;64\n";

    [Fact]
    public void A_clean_file_ends_with_0_and_a_messy_one_with_1()
    {
        using var folder = new ImportFolder();
        folder.Write("clean.csv", "Name;Date;Set 1;Set 2\nAda Novák;2031-03-04;62.4;63.1\n");
        folder.Write("messy.csv", Messy);
        var clean = CommandRun.In(folder.Path, "check", "clean.csv");
        Assert.Equal((0, ""), (clean.ExitCode, clean.Errors));
        Assert.StartsWith("1 row read: 1 kept, 0 refused, 0 awaiting a decision.", clean.Output, StringComparison.Ordinal);
        var messy = CommandRun.In(folder.Path, "check", "messy.csv");
        Assert.Equal(1, messy.ExitCode);
        Assert.Contains("messy.csv, line 3, column 3 'Set 1': '1:72'", messy.Output, StringComparison.Ordinal);
        Assert.Contains("answer \"date-order:messy.csv\" with: dmy | mdy | leave out", messy.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_has_exactly_the_agreed_shape()
    {
        using var folder = new ImportFolder();
        folder.Write("messy.csv", Messy);
        var run = CommandRun.In(folder.Path, "check", "messy.csv", "--format", "json");
        Assert.Equal(1, run.ExitCode);
        using var json = JsonDocument.Parse(run.Output);
        var root = json.RootElement;
        Assert.Equal(["rows", "kept", "refusedRows", "decisionRows", "refused", "decisions"], root.EnumerateObject().Select(property => property.Name));
        Assert.Equal([3, 1, 1, 1], new[] { "rows", "kept", "refusedRows", "decisionRows" }.Select(name => root.GetProperty(name).GetInt32()));
        Assert.Equal(2, root.GetProperty("refused").GetArrayLength());
        var cell = root.GetProperty("refused")[0];
        Assert.Equal(["file", "sheet", "line", "column", "text", "reason", "accepts"], cell.EnumerateObject().Select(property => property.Name));
        Assert.Equal(("messy.csv", 3, "Set 1 (column 3)", "1:72"), (cell.GetProperty("file").GetString(), cell.GetProperty("line").GetInt32(), cell.GetProperty("column").GetString(), cell.GetProperty("text").GetString()));
        Assert.Equal(JsonValueKind.Null, cell.GetProperty("sheet").ValueKind);
        var decision = Assert.Single(root.GetProperty("decisions").EnumerateArray());
        Assert.Equal(["id", "kind", "text", "choices", "rows"], decision.EnumerateObject().Select(property => property.Name));
        Assert.Equal(("date-order:messy.csv", "date-order"), (decision.GetProperty("id").GetString(), decision.GetProperty("kind").GetString()));
        Assert.Equal(4, Assert.Single(decision.GetProperty("rows").EnumerateArray()).GetProperty("line").GetInt32());
    }

    [Theory]
    [InlineData("check")]
    [InlineData("check", "nowhere.csv")]
    [InlineData("check", "messy.csv", "--format", "xml")]
    [InlineData("check", "messy.csv", "--format")]
    [InlineData("check", "messy.csv", "--colour", "blue")]
    [InlineData("check", "messy.csv", "--date", "4/3/2031")]
    [InlineData("check", "messy.csv", "--logbook", "nowhere")]
    [InlineData("add", "messy.csv")]
    [InlineData("frobnicate")]
    public void Wrong_usage_ends_with_2_and_says_what_is_wrong(params string[] arguments)
    {
        using var folder = new ImportFolder();
        folder.Write("messy.csv", Messy);
        var run = CommandRun.In(folder.Path, arguments);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.NotEmpty(run.Errors);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("check", "--help")]
    [InlineData("add", "--help")]
    public void Help_is_there_and_names_the_exit_codes(params string[] arguments)
    {
        var run = CommandRun.In(Path.GetTempPath(), arguments);
        Assert.Equal((0, ""), (run.ExitCode, run.Errors));
        Assert.Contains("Exit codes: 0 done, 1 problems", run.Output, StringComparison.Ordinal);
    }
}
