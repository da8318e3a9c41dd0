using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace SquadAnalytics.Workbench.Tests.Commands;

public sealed class RunCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("squad-run-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("C")]
    [InlineData("de_DE.UTF-8")]
    [InlineData("tr_TR.UTF-8")]
    public void Findings_and_the_report_s_path_are_the_result_whatever_the_machine_speaks(string language)
    {
        var notebook = Notebook("double seconds = 1.5;", "new Finding($\"INDEX: {seconds * 1000} ms longer than {logbook.Squad.Sessions.Count > 0}.\".ToLower())");
        var result = CommandRun.In(_folder, language, ["run", notebook, "--set", "seconds=2.25", "--out", "kept"]);
        Assert.Equal("", Problem(result));
        Assert.StartsWith("1. index: 2250 ms longer than true.", result.Output, StringComparison.Ordinal);
        Assert.EndsWith($"Report: {Path.Combine(_folder, "kept", "report.html")}{Environment.NewLine}", result.Output, StringComparison.Ordinal);
        Assert.StartsWith("cell 1  Parameters  ", result.Errors, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_folder, "kept", "report.html")));
    }

    [Fact]
    public async Task A_failed_cell_is_told_and_exits_with_one_and_the_report_says_where()
    {
        var notebook = Notebook("int sets = 3;", "// Count\nvar none = sets / (sets - 3);");
        var before = Directory.GetFiles(Path.GetDirectoryName(notebook)!);
        var result = CommandRun.In(_folder, "run", Path.GetRelativePath(_folder, notebook));
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("Stopped: cell 2, line 2 (Count): Attempted to divide by zero.", result.Errors, StringComparison.Ordinal);
        var report = Assert.Single(Directory.GetFiles(Path.Combine(_folder, "reports"), "report.html", SearchOption.AllDirectories));
        Assert.Contains("Stopped at cell 2, line 2 (Count).", await File.ReadAllTextAsync(report), StringComparison.Ordinal);
        Assert.Equal(before, Directory.GetFiles(Path.GetDirectoryName(notebook)!));
    }

    [Theory]
    [InlineData("run", "missing", "There is no notebook 'missing'")]
    [InlineData("run", "", "Name the notebook")]
    [InlineData("run", "a b", "one too many")]
    [InlineData("run", "NOTEBOOK --set sets=three", "must be a whole number")]
    [InlineData("run", "NOTEBOOK --set nothing=3", "has no parameter nothing")]
    [InlineData("run", "NOTEBOOK --set", "--set needs a value")]
    [InlineData("run", "NOTEBOOK --time-limit=-1", "above 0")]
    [InlineData("run", "NOTEBOOK --logbook nowhere", "There is no folder nowhere")]
    [InlineData("run", "NOTEBOOK --fast 1", "There is no option --fast")]
    [InlineData("walk", "", "There is no command 'walk'")]
    public void Wrong_usage_exits_with_two_and_says_what_is_wrong(string verb, string arguments, string reason)
    {
        var notebook = Notebook("int sets = 3;", "sets");
        var split = arguments.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(argument => argument == "NOTEBOOK" ? notebook : argument);
        var result = CommandRun.In(_folder, [verb, .. split]);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(reason, result.Errors, StringComparison.Ordinal);
        Assert.Equal("", result.Output);
    }

    [Fact]
    public void An_example_that_the_squad_does_not_have_is_told_before_anything_runs()
    {
        using var folder = new ImportFolder();
        var result = CommandRun.In(folder.Path, "run", "01-why-the-slowdown", "--logbook", "logbook");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("athlete (Boxer): the notebook's example 'DOL' is not in this logbook; choose one of this squad, such as athlete=", result.Errors, StringComparison.Ordinal);
        Assert.DoesNotContain("cell 1", result.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_is_a_result()
    {
        var overview = CommandRun.In(_folder, "--help");
        Assert.Equal((0, ""), (overview.ExitCode, overview.Errors));
        Assert.Contains("  run  ", overview.Output, StringComparison.Ordinal);
        var verb = CommandRun.In(_folder, "run", "--help");
        Assert.Equal(0, verb.ExitCode);
        Assert.Contains("--set NAME=VALUE", verb.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_process_is_left_when_the_program_is_killed_in_an_endless_loop()
    {
        var notebook = Notebook("int sets = 3;", "System.IO.File.WriteAllText(\"process.txt\", Environment.ProcessId.ToString());\nwhile (true) { }");
        using var program = CommandRun.Start(_folder, "run", notebook);
        var noted = Path.Combine(_folder, "books", "process.txt");
        var waiting = Stopwatch.StartNew();
        while ((!File.Exists(noted) || new FileInfo(noted).Length == 0) && waiting.Elapsed < TimeSpan.FromMinutes(2)) await Task.Delay(50);
        using var child = Process.GetProcessById(int.Parse(await File.ReadAllTextAsync(noted), CultureInfo.InvariantCulture));
        program.Kill();
        Assert.True(child.WaitForExit(TimeSpan.FromSeconds(20)), "The notebook's process outlived the program.");
    }

    private static string Problem(CommandRun result) => result.ExitCode == 0 ? "" : result.Errors;

    private string Notebook(string parameters, string code)
    {
        object Cell(string id, string source, string[] tags) => new { cell_type = "code", id, metadata = new { tags }, source, outputs = Array.Empty<object>(), execution_count = (int?)null };
        var notebook = new { nbformat = 4, nbformat_minor = 5, metadata = new { }, cells = new[] { Cell("first", parameters, ["parameters"]), Cell("second", code, []) } };
        var path = Path.Combine(Directory.CreateDirectory(Path.Combine(_folder, "books")).FullName, "question.ipynb");
        File.WriteAllText(path, JsonSerializer.Serialize(notebook));
        return path;
    }
}
