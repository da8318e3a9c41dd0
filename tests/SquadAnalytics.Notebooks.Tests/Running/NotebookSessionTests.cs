using System.Diagnostics;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;

namespace SquadAnalytics.Notebooks.Tests.Running;

/// <summary>Working on a notebook cell by cell. Common practice, no source.</summary>
public sealed class NotebookSessionTests
{
    [Fact]
    public async Task Code_is_completed_explained_and_checked_without_being_run()
    {
        await using var work = Work();
        await work.Session.RunAsync(Code("var times = new[] { 62.4, 63.1 };\nvar first = new Seconds(62.4);"));

        var completions = await work.Session.AskAsync(CodeQuestion.Completions, Code("var x = 1;\ntimes.Aver"), new(2, 11));
        Assert.Contains(completions.Completions, choice => choice is { Name: "Average", Kind: "ExtensionMethod", Text: "Average" });
        Assert.DoesNotContain(completions.Completions, choice => choice.Name == "Sum");
        var members = await work.Session.AskAsync(CodeQuestion.Completions, Code("first."), new(1, 7));
        Assert.Contains(members.Completions, choice => choice is { Name: "Value", Kind: "Property" });

        var hover = await work.Session.AskAsync(CodeQuestion.Hover, Code("first.Value"), new(1, 2));
        Assert.Contains("Seconds", hover.Hover, StringComparison.Ordinal);
        var explained = await work.Session.AskAsync(CodeQuestion.Hover, Code("first.Value"), new(1, 9));
        Assert.Contains("The number of seconds.", explained.Hover, StringComparison.Ordinal);

        var problems = await work.Session.AskAsync(CodeQuestion.Problems, Code("var fine = 1;\nint wrong = \"x\";"));
        var problem = Assert.Single(problems.Problems, problem => problem.IsError);
        Assert.Equal(("CS0029", 2, 13), (problem.Code, problem.Start.Line, problem.Start.Column));

        await work.Session.AskAsync(CodeQuestion.Problems, Code("var never = 1;"));
        var values = (await work.Session.AskAsync(CodeQuestion.Values, Code(""))).Values;
        Assert.Equal(["first", "logbook", "times"], values.Where(value => value.Language == "csharp").Select(value => value.Name));
        Assert.Contains("62.40 s", values[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Completion_asked_while_a_cell_runs_returns_at_once()
    {
        await using var work = Work();
        await work.Session.RunAsync(Code("1"));
        var running = work.Session.RunAsync(Code("await System.Threading.Tasks.Task.Delay(3000);"));
        await Task.Delay(300);
        var clock = Stopwatch.StartNew();
        Assert.Same(CodeAnswer.Empty, await work.Session.AskAsync(CodeQuestion.Completions, Code("Consol"), new(1, 7)));
        Assert.InRange(clock.Elapsed, TimeSpan.Zero, TimeSpan.FromMilliseconds(200));
        Assert.False(running.IsCompleted);
        Assert.Equal(CellEnding.Completed, (await running).Ending);
    }

    [Fact]
    public async Task An_endless_loop_is_interrupted_and_the_next_cell_runs_in_a_new_process()
    {
        await using var work = Work();
        await work.Session.RunAsync(Code("var before = 1;"));
        var process = work.Session.ProcessId;
        var running = await work.BeginAsync("while (true) { }");
        work.Session.Interrupt();
        Assert.Equal(CellEnding.Cancelled, (await running).Ending);
        Assert.Equal(SessionState.Ended, work.Session.State);
        Assert.Contains("values are gone", work.Session.Note, StringComparison.Ordinal);

        Assert.Equal(CellEnding.DidNotCompile, (await work.Session.RunAsync(Code("before"))).Ending);
        Assert.NotEqual(process, work.Session.ProcessId);
        Assert.Null(work.Session.Note);
    }

    [Fact]
    public async Task A_waiting_cell_is_interrupted_and_its_process_keeps_its_values()
    {
        await using var work = Work(TestKernel.Tight with { CancelGrace = TimeSpan.FromSeconds(30) });
        await work.Session.RunAsync(Code("var before = 1;"));
        var running = await work.BeginAsync("await System.Threading.Tasks.Task.Delay(60000);");
        work.Session.Interrupt();
        Assert.Equal(CellEnding.Cancelled, (await running).Ending);
        Assert.Equal(CellEnding.Completed, (await work.Session.RunAsync(Code("before"))).Ending);
    }

    [Fact]
    public async Task Restarting_forgets_all_values()
    {
        await using var work = Work();
        await work.Session.RunAsync(Code("var before = 1;"));
        await work.Session.RestartAsync();
        Assert.Equal((SessionState.Ready, 0), (work.Session.State, work.Session.Executions));
        Assert.Equal(CellEnding.DidNotCompile, (await work.Session.RunAsync(Code("before"))).Ending);
    }

    [Fact]
    public async Task An_idle_process_is_given_up_visibly_and_running_a_cell_starts_another()
    {
        await using var work = Work(TestKernel.Tight with { IdleTime = TimeSpan.FromSeconds(1) });
        var given = new TaskCompletionSource();
        work.Session.Changed += () => { if (work.Session.State == SessionState.GivenUp) given.TrySetResult(); };
        await work.Session.RunAsync(Code("1"));
        using var process = Process.GetProcessById(work.Session.ProcessId!.Value);
        await given.Task.WaitAsync(TimeSpan.FromSeconds(30));
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(10)));
        Assert.StartsWith("Nothing was run for 1 seconds", work.Session.Note, StringComparison.Ordinal);
        Assert.Equal(CellEnding.Completed, (await work.Session.RunAsync(Code("1"))).Ending);
    }

    private static CellCode Code(string source) => new(1, "csharp", source);

    private static SessionAtWork Work(KernelLimits? limits = null) => new(new KernelSource(TestKernel.Command, limits ?? TestKernel.Tight));

    private sealed class SessionAtWork(KernelSource kernels) : IAsyncDisposable
    {
        public NotebookSession Session { get; } = new(kernels, AppContext.BaseDirectory, null, TimeProvider.System);

        /// <summary>Runs code, and waits until it has begun.</summary>
        public async Task<Task<CellResult>> BeginAsync(string code)
        {
            var mark = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
            var running = Session.RunAsync(Code($"System.IO.File.Create({Microsoft.CodeAnalysis.CSharp.SymbolDisplay.FormatLiteral(mark, quote: true)}).Dispose();\n{code}"));
            while (!File.Exists(mark)) await Task.Delay(20);
            File.Delete(mark);
            return running;
        }

        public async ValueTask DisposeAsync()
        {
            await Session.DisposeAsync();
            await kernels.DisposeAsync();
        }
    }
}
