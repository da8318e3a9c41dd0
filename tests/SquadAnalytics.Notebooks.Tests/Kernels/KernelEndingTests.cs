using System.Diagnostics;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Tests.Kernels;

/// <summary>Cells that misbehave. Common practice, no source: each ends as one failed cell, says why, and the workbench lives.</summary>
public sealed class KernelEndingTests
{
    [Fact]
    public async Task An_endless_loop_is_stopped_by_the_time_limit()
    {
        await using var kernel = await TestKernel.StartAsync(TestKernel.Tight with { CellTime = TimeSpan.FromSeconds(6) });
        var result = await kernel.RunAsync("while (true) { }");
        Assert.Equal(CellEnding.TimeLimit, result.Ending);
        Assert.Equal("Stopped: longer than the time limit of 6 s.", result.Fault?.Message);
        Assert.InRange(result.Duration, TimeSpan.FromSeconds(5.9), TimeSpan.FromSeconds(20));
        Assert.False(kernel.IsAlive);
    }

    [Fact]
    public async Task An_endless_loop_behind_an_await_is_stopped_too()
    {
        await using var kernel = await TestKernel.StartAsync(TestKernel.Tight with { CellTime = TimeSpan.FromSeconds(6) });
        var result = await kernel.RunAsync("await System.Threading.Tasks.Task.Delay(10);\nwhile (true) { }");
        Assert.Equal(CellEnding.TimeLimit, result.Ending);
        Assert.False(kernel.IsAlive);
    }

    [Fact]
    public async Task A_cell_that_waits_too_long_is_stopped_and_its_process_goes_on()
    {
        await using var kernel = await TestKernel.StartAsync(TestKernel.Tight with { CellTime = TimeSpan.FromSeconds(6), CancelGrace = TimeSpan.FromSeconds(10) });
        var result = await kernel.RunAsync("await System.Threading.Tasks.Task.Delay(60000);");
        Assert.Equal(CellEnding.TimeLimit, result.Ending);
        Assert.True(kernel.IsAlive);
        Assert.Equal(CellEnding.Completed, (await kernel.RunAsync("1 + 1")).Ending);
    }

    [Fact]
    public async Task Endless_recursion_is_told_as_a_stack_overflow()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("int Deeper(int depth) => Deeper(depth + 1) + 1;\nDeeper(0)");
        Assert.Equal(CellEnding.StackOverflow, result.Ending);
        Assert.Contains("call stack overflowed", result.Fault?.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ending_the_process_is_told_with_its_exit_code()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("Environment.Exit(7);");
        Assert.Equal(CellEnding.ProcessExit, result.Ending);
        Assert.Contains("exit code 7", result.Fault?.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_failing_fast_process_is_told_as_a_crash()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("Environment.FailFast(\"the bell fell off\");");
        Assert.Equal(CellEnding.Crash, result.Ending);
        Assert.Contains("broke down", result.Fault?.Message, StringComparison.Ordinal);
        Assert.Contains("the bell fell off", result.Fault?.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_managed_allocation_of_20_GB_is_told_as_too_much_memory()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("var kept = new List<byte[]>();\nfor (var i = 0; i < 20; i++) kept.Add(new byte[1 << 30]);");
        Assert.Equal(CellEnding.MemoryLimit, result.Ending);
        Assert.Contains("more memory", result.Fault?.Message, StringComparison.Ordinal);
        Assert.Equal(CellEnding.Completed, (await kernel.RunAsync("1 + 1")).Ending);
    }

    [Fact]
    public async Task A_native_allocation_of_20_GB_is_told_as_too_much_memory()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("""
            for (var i = 0; i < 200; i++)
            {
                var block = System.Runtime.InteropServices.Marshal.AllocHGlobal(100 << 20);
                for (var at = 0; at < 100 << 20; at += 4096) System.Runtime.InteropServices.Marshal.WriteByte(block, at, 1);
            }
            """);
        Assert.Equal(CellEnding.MemoryLimit, result.Ending);
        Assert.False(kernel.IsAlive);
    }

    [Fact]
    public async Task A_gigabyte_of_output_is_cut_off()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("var line = new string('x', 1 << 20);\nfor (var i = 0; i < 1024; i++) Console.WriteLine(line);");
        Assert.Equal(CellEnding.OutputLimit, result.Ending);
        Assert.Contains("more output", result.Fault?.Message, StringComparison.Ordinal);
        Assert.True(result.Outputs.Sum(output => output.Size()) <= TestKernel.Tight.OutputSize);
    }

    [Fact]
    public async Task A_gigabyte_written_past_the_console_is_cut_off_too()
    {
        await using var kernel = await TestKernel.StartAsync();
        var result = await kernel.RunAsync("""
            var raw = Console.OpenStandardOutput();
            var block = new byte[1 << 20];
            for (var i = 0; i < 1024; i++) raw.Write(block);
            """);
        Assert.Equal(CellEnding.OutputLimit, result.Ending);
    }

    [Fact]
    public async Task A_cancelled_cell_says_that_it_was_stopped_by_request()
    {
        await using var kernel = await TestKernel.StartAsync();
        using var cancel = new CancellationTokenSource(TimeSpan.FromMilliseconds(500));
        var result = await kernel.RunAsync("while (true) { }", cancel.Token);
        Assert.Equal(CellEnding.Cancelled, result.Ending);
        Assert.Equal("Stopped by request.", result.Fault?.Message);
    }

    [Fact]
    public async Task A_process_ended_from_outside_is_told_as_a_crash()
    {
        await using var kernel = await TestKernel.StartAsync();
        var running = kernel.RunAsync("while (true) { }");
        using (var process = Process.GetProcessById(kernel.ProcessId)) process.Kill();
        var result = await running;
        Assert.Equal(CellEnding.Crash, result.Ending);
        Assert.Contains("ended from outside", result.Fault?.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_process_whose_workbench_is_gone_ends_even_in_an_endless_loop()
    {
        var kernel = await TestKernel.StartAsync();
        using var process = Process.GetProcessById(kernel.ProcessId);
        var running = kernel.RunAsync("while (true) { }");
        await Task.Delay(200);
        kernel.ClosePipe();
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(10)), "The process outlived its pipe.");
        Assert.Equal(CellEnding.Crash, (await running).Ending);
        await kernel.DisposeAsync();
    }
}
