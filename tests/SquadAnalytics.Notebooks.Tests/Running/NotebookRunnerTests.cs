using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Parameters;
using SquadAnalytics.Notebooks.Running;
using static SquadAnalytics.Notebooks.Tests.TestNotebook;

namespace SquadAnalytics.Notebooks.Tests.Running;

public sealed class NotebookRunnerTests
{
    [Fact]
    public async Task Chosen_parameters_reach_the_cells_and_findings_come_back()
    {
        var notebook = Of(
            Code("#r \"nowhere.dll\"", "jupyter-setup"),
            Code("double seconds = 1.5; // how much [0..10]", "parameters"),
            Code("new Finding($\"It took {seconds} s longer.\") { Method = \"difference\", Source = \"hand\", Notes = [\"invented\"] }"));
        var run = await RunAsync(notebook, new ParameterSetting("seconds", "2.25"));
        Assert.Null(run.Problem);
        Assert.Equal([CellEnding.Skipped, CellEnding.Completed, CellEnding.Completed], run.Cells.Select(cell => cell.Result.Ending));
        var finding = Assert.Single(run.Findings);
        Assert.Equal(("It took 2.25 s longer.", "difference · hand", "invented"), (finding.Sentence, finding.Basis(), Assert.Single(finding.Notes)));
    }

    [Fact]
    public async Task A_failing_cell_stops_the_run_and_is_named_with_its_line()
    {
        var run = await RunAsync(Of(Code("1"), Prose("text"), Code("// Divide\nvar zero = 0;\n1 / zero"), Code("2")));
        Assert.False(run.Succeeded);
        Assert.Equal([CellEnding.Completed, CellEnding.Failed, CellEnding.NotRun], run.Cells.Select(cell => cell.Result.Ending));
        Assert.Equal("cell 2, line 3 (Divide): Attempted to divide by zero.", run.Problem);
    }

    [Fact]
    public async Task A_cell_that_ends_its_process_stops_the_run()
    {
        var run = await RunAsync(Of(Code("Environment.Exit(0);"), Code("2")));
        Assert.Equal([CellEnding.ProcessExit, CellEnding.NotRun], run.Cells.Select(cell => cell.Result.Ending));
    }

    [Fact]
    public async Task A_notebook_of_which_nothing_was_executed_is_a_failure()
    {
        var run = await RunAsync(Of(Prose("# Only prose"), Code("1", "jupyter-setup")));
        Assert.False(run.Succeeded);
        Assert.Equal("The notebook has no code cell that could be run.", run.Problem);
    }

    [Fact]
    public async Task A_missing_logbook_keeps_the_notebook_from_running()
    {
        await using var kernels = new KernelSource(TestKernel.Command, TestKernel.Tight);
        var request = new RunRequest("test", Of(Code("1")), AppContext.BaseDirectory) { LogbookFolder = AppContext.BaseDirectory };
        var run = await new NotebookRunner(kernels, TimeProvider.System).RunAsync(request);
        Assert.Contains("There is no logbook", run.Obstacle, StringComparison.Ordinal);
        Assert.Equal(CellEnding.NotRun, Assert.Single(run.Cells).Result.Ending);
    }

    [Fact]
    public async Task A_parameter_that_the_notebook_does_not_have_is_refused()
    {
        var error = await Assert.ThrowsAsync<ParameterException>(() => RunAsync(Of(Code("int sets = 3;", "parameters")), new ParameterSetting("set", "4")));
        Assert.Equal("test has no parameter set: it has sets.", error.Message);
    }

    [Fact]
    public void A_setting_without_an_equals_sign_is_refused() =>
        Assert.Contains("NAME=VALUE", Assert.Throws<ParameterException>(() => ParameterSetting.Parse("athlete")).Message, StringComparison.Ordinal);
}
