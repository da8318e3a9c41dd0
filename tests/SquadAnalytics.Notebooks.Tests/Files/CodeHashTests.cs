using SquadAnalytics.Notebooks.Files;

namespace SquadAnalytics.Notebooks.Tests.Files;

/// <summary>What counts as the same code. Common practice, no source.</summary>
public sealed class CodeHashTests
{
    [Fact]
    public void Prose_and_outputs_do_not_count()
    {
        var notebook = TestNotebook.Of(TestNotebook.Prose("one"), TestNotebook.Code("1"));
        var other = TestNotebook.Of(TestNotebook.Code("1") with { Run = new CellOutputs(1, [], null) }, TestNotebook.Prose("two"));
        Assert.Equal(CodeHash.Of(notebook), CodeHash.Of(other));
        Assert.Equal(CodeHash.Of(notebook), CodeHash.Of(NotebookFile.Parse(NotebookFile.ToJson(notebook))));
    }

    [Fact]
    public void Every_change_of_what_is_run_counts()
    {
        var first = CodeHash.Of(TestNotebook.Of(TestNotebook.Code("ab"), TestNotebook.Code("c")));
        Notebook[] others =
        [
            TestNotebook.Of(TestNotebook.Code("a"), TestNotebook.Code("bc")),
            TestNotebook.Of(TestNotebook.Code("c"), TestNotebook.Code("ab")),
            TestNotebook.Of(TestNotebook.Code("ab")),
            TestNotebook.Of(TestNotebook.Code("ab"), TestNotebook.Code("c") with { Language = "sql" }),
            TestNotebook.Of(TestNotebook.Code("ab"), TestNotebook.Code("c", NotebookCell.SetupTag)),
        ];
        Assert.Equal(others.Length + 1, others.Select(CodeHash.Of).Append(first).Distinct().Count());
    }
}
