using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using SquadAnalytics.Notebooks.Hosting;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Scripting;

namespace SquadAnalytics.Notebooks.Tests.Scripting;

/// <summary>The kernel of C# cells, as C# scripts are defined: the makers' documentation of C# scripting (Microsoft.CodeAnalysis.CSharp.Scripting 5.0.0).</summary>
public sealed class ScriptKernelTests : IDisposable
{
    private readonly ScriptKernel _kernel = new ScriptKernel("csharp", new ScriptSetup(Prelude.Assemblies)).UseValueSharing();

    public void Dispose() => _kernel.Dispose();

    [Theory]
    [InlineData("1 + 1", 2)]
    [InlineData("var x = 1; x", 1)]
    [InlineData("(string)null", null)]
    public async Task A_cell_that_ends_in_an_expression_shows_its_value(string code, object? value)
    {
        var result = await RunAsync(code);
        Assert.DoesNotContain(result.Events, happened => happened is CommandFailed);
        var shown = Assert.Single(result.Events.OfType<ReturnValueProduced>());
        Assert.Equal(value, shown.Value);
        Assert.NotEmpty(shown.FormattedValues);
    }

    [Theory]
    [InlineData("var y = 1;")]
    [InlineData("int.Parse(\"1\");")]
    [InlineData("System.GC.KeepAlive(1)")]
    [InlineData("System.GC.KeepAlive(1);")]
    [InlineData("")]
    public async Task Other_cells_show_nothing(string code)
    {
        var result = await RunAsync(code);
        Assert.DoesNotContain(result.Events, happened => happened is CommandFailed or ReturnValueProduced);
    }

    [Fact]
    public async Task What_a_cell_declared_before_it_threw_is_known_to_the_next()
    {
        var failed = await RunAsync("var before = 7;\nthrow new InvalidOperationException(\"no\");");
        Assert.Equal("no", Assert.Single(failed.Events.OfType<CommandFailed>()).Exception!.Message);
        Assert.Equal(7, (await RunAsync("before")).Events.OfType<ReturnValueProduced>().Single().Value);
    }

    [Fact]
    public async Task A_cell_that_is_not_CSharp_says_where_and_changes_nothing()
    {
        await RunAsync("var x = 1;");
        var failed = await RunAsync("x = 2;\nvar y = nothing;");
        var problem = Assert.Single(Assert.Single(failed.Events.OfType<DiagnosticsProduced>()).Diagnostics);
        Assert.Equal(("CS0103", 1, 8), (problem.Code, problem.LinePositionSpan.Start.Line, problem.LinePositionSpan.Start.Character));
        Assert.Single(failed.Events.OfType<CommandFailed>());
        Assert.Equal(1, (await RunAsync("x")).Events.OfType<ReturnValueProduced>().Single().Value);
    }

    [Fact]
    public async Task Names_can_be_declared_anew_with_another_type()
    {
        await RunAsync("var x = 1;");
        await RunAsync("var x = \"one\";");
        Assert.True(_kernel.TryGet("x", out string? value));
        Assert.Equal("one", value);
        Assert.False(_kernel.TryGet("x", out int _));
        Assert.Single(_kernel.All(), pair => pair.Key == "x");
    }

    [Fact]
    public async Task Values_of_every_form_of_type_can_be_given_a_name()
    {
        object[] values = [1.5, new[] { 1, 2 }, new int[1, 2], new List<Dictionary<string, double>>(), (Seconds?)new Seconds(60), new Dictionary<string, List<int>>.KeyCollection([])];
        foreach (var value in values)
        {
            await _kernel.SetAsync("given", value, value.GetType());
            Assert.True(_kernel.TryGet<object>("given", out var known));
            Assert.Equal(value, known);
        }
    }

    [Fact]
    public async Task Code_being_written_is_completed_after_all_cells_that_ran()
    {
        await RunAsync("using SquadAnalytics;\nvar first = new Seconds(60);");
        Assert.Contains("Value", await OfferedAsync("first."));
        await RunAsync("var later = \"text\";\nclass Heat { public int Boxers; }");
        await RunAsync("var first = later;");
        Assert.Contains("Length", await OfferedAsync("first."));
        Assert.Contains("Boxers", await OfferedAsync("new Heat()."));
        Assert.DoesNotContain("Value", await OfferedAsync("first."));
        var hover = await _kernel.SendAsync(new RequestHoverText("later.Length", new LinePosition(0, 8), "csharp"));
        Assert.Contains("int string.Length", hover.Events.OfType<HoverTextProduced>().Single().Content.Single().Value, StringComparison.Ordinal);
        var problems = await _kernel.SendAsync(new RequestDiagnostics("first.Value", "csharp"));
        Assert.Equal("CS1061", problems.Events.OfType<DiagnosticsProduced>().Single().Diagnostics.Single().Code);
    }

    [Fact]
    public async Task Before_any_cell_ran_code_can_be_completed_too() => Assert.Contains("KeepAlive", await OfferedAsync("System.GC."));

    [Fact]
    public async Task A_library_beside_the_notebook_is_found_by_its_relative_path()
    {
        var folder = Directory.CreateTempSubdirectory("script-");
        File.Copy(typeof(CsvHelper.CsvReader).Assembly.Location, Path.Combine(folder.FullName, "beside.dll"));
        var before = Directory.GetCurrentDirectory();
        try
        {
            Directory.SetCurrentDirectory(folder.FullName);
            Assert.Equal("CsvReader", (await RunAsync("#r \"beside.dll\"\ntypeof(CsvHelper.CsvReader).Name")).Events.OfType<ReturnValueProduced>().Single().Value);
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task Cells_compiled_ahead_run_as_if_they_had_not_been()
    {
        var folder = Directory.GetCurrentDirectory();
        await RunAsync("var count = 1;");
        string[] cells = ["count++;", "var doubled = 2 * count;", "count", "doubled", "nothing", "count + 1"];
        _kernel.Prepare(folder, [.. cells.Select((cell, index) => new CellCode(index + 1, "csharp", cell))]);
        var shown = new List<object?>();
        for (var index = 0; index < cells.Length; index++)
        {
            _kernel.Cell = index + 1;
            var result = await RunAsync(cells[index]);
            Assert.Equal(cells[index] == "nothing", result.Events.OfType<CommandFailed>().Any());
            shown.AddRange(result.Events.OfType<ReturnValueProduced>().Select(produced => produced.Value));
        }

        Assert.Equal([2, 4, 3], shown.Cast<int>());
    }

    [Theory]
    [InlineData("totals")]
    [InlineData("others")]
    public async Task A_value_named_between_cells_is_known_to_those_compiled_ahead(string named)
    {
        await RunAsync("var others = \"\";");
        _kernel.Prepare(Directory.GetCurrentDirectory(), [new(1, "csharp", ScriptKernel.Declaration("totals", typeof(List<int>))), new(2, "csharp", $"{named}.Count()")]);
        _kernel.Cell = 1;
        await _kernel.SetAsync(named, new List<int> { 3, 4 }, typeof(List<int>));
        _kernel.Cell = 2;
        Assert.Equal(2, (await RunAsync($"{named}.Count()")).Events.OfType<ReturnValueProduced>().Single().Value);
    }

    [Theory]
    [InlineData("text.Length\ntext.", "Trim")]
    [InlineData("text\n    text.", "Trim")]
    [InlineData("{\n    text[0]\n    text.", "Trim")]
    [InlineData("var other = text\ntext.", "Trim")]
    [InlineData("from letter in text\nwhere letter.", "CompareTo")]
    public async Task A_line_without_its_semicolon_does_not_keep_the_next_from_being_completed(string code, string offered)
    {
        await RunAsync("var text = \"a\";");
        Assert.Contains(offered, await OfferedAsync(code));
    }

    [Theory]
    [InlineData("var count = \"changed\";")]
    [InlineData("var other = 1;")]
    [InlineData("throw new InvalidOperationException();")]
    public async Task Another_cell_than_was_expected_makes_the_rest_be_compiled_anew(string unexpected)
    {
        await RunAsync("var count = 1; int Next() => 2;");
        _kernel.Prepare(Directory.GetCurrentDirectory(), [new(1, "csharp", "var step = 2;"), new(2, "csharp", "count + 2"), new(3, "csharp", "count.GetType().Name.Length")]);
        _kernel.Cell = 1;
        await RunAsync(unexpected);
        _kernel.Cell = 3;
        var length = (await RunAsync("count.GetType().Name.Length")).Events.OfType<ReturnValueProduced>().Single().Value;
        Assert.Equal(unexpected.Contains("changed", StringComparison.Ordinal) ? "String".Length : "Int32".Length, length);
        Assert.Equal(2, (await RunAsync("Next()")).Events.OfType<ReturnValueProduced>().Single().Value);
    }

    private Task<KernelCommandResult> RunAsync(string code) => _kernel.SendAsync(new SubmitCode(code));

    private async Task<IReadOnlyList<string>> OfferedAsync(string code)
    {
        var lines = code.Split('\n');
        var result = await _kernel.SendAsync(new RequestCompletions(code, new LinePosition(lines.Length - 1, lines[^1].Length), "csharp"));
        return [.. result.Events.OfType<CompletionsProduced>().Single().Completions.Select(item => item.DisplayText)];
    }
}
