using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Tests.Kernels;

public sealed class KernelProcessTests
{
    [Fact]
    public async Task Values_text_and_results_come_back_in_order()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("Console.Write(\"first \"); Console.Write(\"second\");\ndisplay(\"third\");\nConsole.Error.Write(\"fourth\");\n40 + 2");
        Assert.Equal(CellEnding.Completed, result.Ending);
        Assert.Collection(
            result.Outputs,
            output => Assert.Equal(new WrittenText("first second", false), output),
            output => Assert.Equal("third", Assert.IsType<ShownValue>(output).Form(MimeTypes.Text)),
            output => Assert.Equal(new WrittenText("fourth", true), output),
            output => Assert.Equal("42", Assert.IsType<ShownValue>(output) is { IsResult: true } value ? value.Form(MimeTypes.Text) : null));
    }

    [Fact]
    public async Task Names_live_on_from_cell_to_cell()
    {
        await using var kernel = await TestKernel.StartAsync();
        await kernel.RunAsync("var sets = new[] { 62.4, 63.1 };");
        Assert.Equal("125.5", Shown(await kernel.RunAsync("sets.Sum()")));
    }

    [Fact]
    public async Task Of_practised_cells_nothing_remains()
    {
        await using var kernels = new KernelSource(TestKernel.Command, TestKernel.Tight);
        var folder = Directory.CreateTempSubdirectory("practice-");
        try
        {
            var mark = Path.Combine(folder.FullName, "played");
            kernels.Practise(folder.FullName, null, [new(1, "csharp", "var secret = 1; Console.Write(\"practised\"); secret"), new(2, "csharp", $"System.IO.File.WriteAllText(\"{mark.Replace("\\", "\\\\", StringComparison.Ordinal)}\", secret.ToString());"), new(3, "csharp", "throw new Exception();")]);
            for (var waited = 0; waited < 600 && !File.Exists(mark); waited++) await Task.Delay(100);
            Assert.True(File.Exists(mark), "The cells were not practised.");
            await using var kernel = (await kernels.TakeAsync(folder.FullName, null, [])).Process;
            Assert.Equal(CellEnding.DidNotCompile, (await kernel.RunAsync("secret")).Ending);
            var result = await kernel.RunAsync("1 + 1");
            Assert.Equal("2", Shown(result));
            Assert.Single(result.Outputs);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task The_library_is_in_scope()
    {
        await using var kernel = await TestKernel.StartAsync();
        Assert.Equal("62.40 s", Shown(await kernel.RunAsync("new Seconds(62.4)")));
    }

    [Fact]
    public async Task Numbers_are_written_the_same_way_whatever_the_machine_speaks()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("Console.Write(1234.5);\n$\"{0.5} {new DateTime(2026, 3, 1):d} {\"TITLE\".ToLower()}\"");
        Assert.Equal(new WrittenText("1234.5", false), result.Outputs[0]);
        Assert.Equal("0.5 2026-03-01 title", Assert.IsType<ShownValue>(result.Outputs[1]).Form(MimeTypes.Text));
    }

    [Fact]
    public async Task Code_that_does_not_compile_is_told_with_line_column_and_source()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("var first = 1;\nint second =\n  \"x\";");
        Assert.Equal(CellEnding.DidNotCompile, result.Ending);
        Assert.Equal(("CS0029", 3, 3, "  \"x\";"), (result.Fault?.Name, result.Fault?.Line, result.Fault?.Column, result.Fault?.Excerpt));
    }

    [Fact]
    public async Task An_exception_is_told_with_the_line_that_it_left_from()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("var zero = 0;\n\nvar none = 1 / zero;");
        Assert.Equal(CellEnding.Failed, result.Ending);
        Assert.Equal((nameof(DivideByZeroException), 3, "var none = 1 / zero;"), (result.Fault?.Name, result.Fault?.Line, result.Fault?.Excerpt));
        Assert.Equal("line 3: Attempted to divide by zero.", result.Fault?.ToString());
    }

    [Fact]
    public async Task An_exception_out_of_a_method_of_the_cell_names_the_innermost_line()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("double Check(double seconds)\n{\n    throw new ArgumentException(\"too slow\");\n}\nCheck(3)");
        Assert.Equal(3, result.Fault?.Line);
    }

    [Fact]
    public async Task A_shared_value_that_does_not_exist_is_a_failure()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("#!set --name copied --value @csharp:missing");
        Assert.Equal(CellEnding.DidNotCompile, result.Ending);
        Assert.Contains("missing", result.Fault?.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_language_without_a_kernel_is_a_failure_and_not_passed_over()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync(new CellCode(1, "fsharp", "1 + 1"));
        Assert.Equal(CellEnding.DidNotCompile, result.Ending);
        Assert.Contains("'fsharp'", result.Fault?.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_failed_cell_leaves_the_process_usable()
    {
        await using var kernel = await TestKernel.StartAsync();
        await kernel.RunAsync("throw new Exception();");
        Assert.Equal("2", Shown(await kernel.RunAsync("1 + 1")));
    }

    [Fact]
    public async Task The_process_says_what_it_runs_on()
    {
        await using var kernel = KernelProcess.Start(TestKernel.Command, TestKernel.Tight);
        var identity = await kernel.ReadyAsync();
        Assert.StartsWith("Microsoft.DotNet.Interactive 1.0.0", identity.Engine, StringComparison.Ordinal);
        Assert.StartsWith(".NET 10", identity.Runtime, StringComparison.Ordinal);
        Assert.StartsWith("SquadAnalytics 0.", identity.Library, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_program_that_is_not_ours_does_not_become_ready()
    {
        await using var kernel = KernelProcess.Start(TestKernel.Command with { Arguments = ["--version"] }, TestKernel.Tight);
        var error = await Assert.ThrowsAsync<KernelException>(() => kernel.ReadyAsync());
        Assert.Contains("did not become ready", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_spare_process_is_handed_over_once()
    {
        await using var source = new KernelSource(TestKernel.Command, TestKernel.Tight);
        source.Prepare();
        await using var first = (await source.TakeAsync(AppContext.BaseDirectory, null, [])).Process;
        await using var second = (await source.TakeAsync(AppContext.BaseDirectory, null, [])).Process;
        Assert.NotEqual(first.ProcessId, second.ProcessId);
        Assert.Equal("2", Shown(await first.RunAsync("1 + 1")));
    }

    [Fact]
    public async Task One_other_process_is_tried_where_the_first_does_not_become_ready_in_its_time()
    {
        var folder = Directory.CreateTempSubdirectory("starts-");
        var starts = Path.Combine(folder.FullName, "starts");
        var hanging = new KernelCommand("/bin/sh", ["-c", $"echo started >> '{starts}'; exec sleep 600", "sh"]);
        await using var source = new KernelSource(hanging, TestKernel.Tight with { StartTime = TimeSpan.FromSeconds(2) });
        var error = await Assert.ThrowsAsync<KernelException>(() => source.TakeAsync(AppContext.BaseDirectory, null, []));
        Assert.Equal("The notebook's process did not become ready within 2 s, so it was ended.", error.Message);
        Assert.Equal(2, (await File.ReadAllLinesAsync(starts)).Length);
        folder.Delete(recursive: true);
    }

    private static string? Shown(CellResult result) => result.Outputs.OfType<ShownValue>().LastOrDefault()?.Form(MimeTypes.Text);
}
