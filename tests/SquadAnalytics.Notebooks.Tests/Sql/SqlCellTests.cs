using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Storage;
using static SquadAnalytics.Notebooks.Tests.TestNotebook;

namespace SquadAnalytics.Notebooks.Tests.Sql;

/// <summary>C# and SQL cells in one notebook, in the same process as users have.</summary>
public sealed class SqlCellTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("squad-sql-").FullName;

    public SqlCellTests()
    {
        var protocol = new Protocol("quay-v1", "Quay circuit", [], 4, new Seconds(120));
        using var logbook = Logbook.Create(LogbookFolder, "Quay");
        logbook.Commit(new LogbookChange("squad")
        {
            Athletes = [new Athlete("a1", "Bo Lindqvist", "BL"), new Athlete("a2", "Ada Invented", "AI")],
            Protocols = [protocol],
            Sessions =
            [
                Session.FromTimes("s1", "a1", new DateOnly(2031, 3, 4), protocol, 62.4, 63.1, 64, 69),
                Session.FromTimes("s2", "a1", new DateOnly(2031, 3, 11), protocol, 61, 62, 63, 66),
                Session.FromTimes("s3", "a2", new DateOnly(2031, 3, 4), protocol, 70, 70, 70, 70),
            ],
        });
    }

    private string LogbookFolder => Path.Combine(_folder, "logbook");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task A_question_nobody_foresaw_is_one_SQL_cell_and_its_figure_one_line_of_csharp()
    {
        var run = await RunAsync(
            Code("string athlete = \"BL\";", NotebookCell.ParametersTag),
            Sql("#!sql --name evening\n-- Totals of one boxer\nSELECT test_date, total_s FROM session_measures JOIN athletes USING (athlete_id) WHERE code = $athlete ORDER BY test_date"),
            Code("evening.Plot(\"test_date\", \"total_s\")"),
            Code("record Test(DateOnly TestDate, Seconds TotalS);\nevening.As<Test>().Min(test => test.TotalS)"),
            Sql("#!sql\nSELECT max(total_s) AS worst_s FROM evening"),
            Code("var weights = new[] { new { Code = \"AI\", BodyMass = 61.5 } };\nvar masses = Frame.Of(weights).ToDataFrame();"),
            Sql("#!sql\nSELECT code, body_mass, count(*) AS tests FROM weights JOIN athletes USING (code) JOIN sessions USING (athlete_id) GROUP BY ALL"),
            Sql("#!sql\nSELECT sum(body_mass) AS all_kg FROM masses"));

        Assert.Null(run.Failure);
        Assert.Contains("<caption>Totals of one boxer</caption>", Shown(run, 2).Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.Equal("test_date,total_s\n2031-03-04,258.5\n2031-03-11,252\n", Shown(run, 2).Form(MimeTypes.Csv)!.ReplaceLineEndings("\n"));
        Assert.Contains("first 258.5, last 252", Shown(run, 3).Form(MimeTypes.Text), StringComparison.Ordinal);
        Assert.NotNull(Shown(run, 3).Form(MimeTypes.Svg));
        Assert.Equal("252.00 s", Shown(run, 4).Form(MimeTypes.Text));
        Assert.Contains("258.5", Shown(run, 5).Form(MimeTypes.Text), StringComparison.Ordinal);
        Assert.Equal("code,body_mass,tests\nAI,61.5,1\n", Shown(run, 7).Form(MimeTypes.Csv)!.ReplaceLineEndings("\n"));
        Assert.Equal("all_kg\n61.5\n", Shown(run, 8).Form(MimeTypes.Csv)!.ReplaceLineEndings("\n"));
    }

    [Fact]
    public async Task What_is_wrong_with_a_query_is_said_with_its_line_and_column()
    {
        await using var kernel = await StartAsync();
        await FailsAsync("#!sql\nSELECT total_s,\n  totl_s\nFROM session_measures", 3, 3, "totl_s");
        await FailsAsync("SELECT *\nFROM evenings", 2, 6, "There is no table evenings");
        await FailsAsync("#!sql --name x\nSELEC 1", 2, 1, "Syntax error");
        await FailsAsync("#!sql\nSELECT * FROM read_csv('/etc/hostname')", 2, 15, "read_csv cannot be used here");

        async Task FailsAsync(string code, int line, int column, string message)
        {
            var fault = (await kernel.RunAsync(new CellCode(2, "sql", code))).Fault!;
            Assert.Equal((line, column), (fault.Line!.Value, fault.Column!.Value));
            Assert.Equal(code.Split('\n')[line - 1], fault.Excerpt);
            Assert.Contains(message, fault.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_cell_that_asks_for_what_cannot_be_fails_with_the_reason()
    {
        await using var kernel = await StartAsync();
        await kernel.RunAsync("string word = \"AI\";");
        await FailsAsync("#!sql --name sessions\nSELECT 1 AS x", "sessions is a table of the logbook");
        await FailsAsync("#!sql --name logbook\nSELECT 1 AS x", "logbook is the name of the logbook itself");
        await FailsAsync("#!sql\nCREATE TABLE x AS SELECT 1", "Only queries can be run");
        await FailsAsync("#!sql\nSELECT $nothing AS x", "asks for $nothing");
        await FailsAsync("#!sql\nSELECT $logbook AS x", "is a Logbook");
        await FailsAsync("#!sql\nFROM word", "write $word to use it as a value");

        async Task FailsAsync(string code, string message)
        {
            var result = await kernel.RunAsync(new CellCode(2, "sql", code));
            Assert.NotEqual(CellEnding.Completed, result.Ending);
            Assert.Contains(message, result.Fault!.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_query_that_runs_too_long_is_stopped_and_the_next_one_runs()
    {
        await using var kernel = await StartAsync();
        using var stop = new CancellationTokenSource();
        var endless = kernel.RunAsync(new CellCode(1, "sql", "SELECT count(*) AS n FROM range(1000000000000) t(i) WHERE i % 7 = 8"), null, stop.Token);
        stop.CancelAfter(TimeSpan.FromSeconds(2));
        Assert.Equal(CellEnding.Cancelled, (await endless).Ending);
        Assert.Equal(CellEnding.Completed, (await kernel.RunAsync(new CellCode(2, "sql", "SELECT 1 AS x"))).Ending);
    }

    [Fact]
    public async Task Whoever_writes_a_query_is_offered_tables_and_columns_and_told_what_they_are()
    {
        await using var kernel = await StartAsync();
        var choices = (await kernel.AskAsync(CodeQuestion.Completions, new CellCode(1, "sql", "SELECT decr"), new CodePlace(1, 12))).Completions;
        Assert.Equal("decrement_percent", choices[0].Name);
        Assert.Contains("Percentage decrement", (await kernel.AskAsync(CodeQuestion.Hover, new CellCode(1, "sql", "SELECT decrement_percent"), new CodePlace(1, 12))).Hover, StringComparison.Ordinal);
        var problem = Assert.Single((await kernel.AskAsync(CodeQuestion.Problems, new CellCode(1, "sql", "#!sql\nSELEC 1"), new CodePlace(1, 1))).Problems);
        Assert.Equal(2, problem.Start.Line);
    }

    [Fact]
    public async Task Queries_see_the_logbook_as_it_is_now()
    {
        var run = await RunAsync(
            Sql("SELECT count(*) AS tests FROM sessions"),
            Code("logbook.VoidSession(\"s3\", \"watch stopped\");"),
            Sql("SELECT count(*) AS tests FROM sessions WHERE void_reason IS NULL"));
        Assert.Equal("tests\n3\n", Shown(run, 1).Form(MimeTypes.Csv)!.ReplaceLineEndings("\n"));
        Assert.Equal("tests\n2\n", Shown(run, 3).Form(MimeTypes.Csv)!.ReplaceLineEndings("\n"));
    }

    [Fact]
    public async Task A_notebook_without_SQL_loads_no_database()
    {
        var run = await RunAsync(Code("Tables.SetTimes(\"Tests\", logbook.Squad.Sessions)"), Code("AppDomain.CurrentDomain.GetAssemblies().Any(one => one.GetName().Name!.StartsWith(\"DuckDB\"))"));
        Assert.Contains("False", Shown(run, 2).Form(MimeTypes.Text), StringComparison.Ordinal);
    }

    private async Task<KernelProcess> StartAsync()
    {
        var kernel = await TestKernel.StartAsync(TestKernel.Tight with { CancelGrace = TimeSpan.FromSeconds(30) });
        await kernel.OpenAsync(_folder, LogbookFolder, []);
        return kernel;
    }

    private static NotebookCell Sql(string source) => new(CellKind.Code, source) { Language = "sql" };

    private static ShownValue Shown(NotebookRun run, int cell) => Assert.IsType<ShownValue>(Assert.Single(run.Cells[cell - 1].Result.Outputs));

    private async Task<NotebookRun> RunAsync(params NotebookCell[] cells)
    {
        await using var kernels = new KernelSource(TestKernel.Command, TestKernel.Tight);
        return await new NotebookRunner(kernels, TimeProvider.System).RunAsync(new RunRequest("sql", Of(cells), _folder) { LogbookFolder = LogbookFolder });
    }
}
