using System.Text.Json.Nodes;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Tests.Files;

public sealed class NotebookFileTests
{
    private const string FromElsewhere = """
        {
         "metadata": { "kernelspec": { "name": ".net-csharp", "display_name": ".NET (C#)", "language": "C#" }, "somebody": { "kept": [1, "ä"] } },
         "nbformat": 4, "nbformat_minor": 2,
         "cells": [
          { "cell_type": "markdown", "metadata": { "deletable": false }, "source": "# A question\n\nWhy?" },
          { "cell_type": "code", "id": "times", "metadata": { "tags": ["parameters"], "collapsed": true }, "source": ["int sets = 3;\n", "int last = 5;"],
            "execution_count": 4, "outputs": [{ "output_type": "stream", "name": "stdout", "text": ["kept\n"] }] },
          { "cell_type": "code", "id": "times", "metadata": { "polyglot_notebook": { "kernelName": "sql", "x": 1 } }, "source": "#!sql\nselect 1", "execution_count": null, "outputs": [] },
          { "cell_type": "raw", "id": "not an id", "metadata": {}, "source": ["raw"] }
         ]
        }
        """;

    [Fact]
    public void A_notebook_is_read_with_its_languages_tags_and_question()
    {
        var notebook = NotebookFile.Parse(FromElsewhere);
        Assert.Equal(("A question", "Why?"), (notebook.Title, notebook.Question));
        Assert.Equal([CellKind.Markdown, CellKind.Code, CellKind.Code, CellKind.Raw], notebook.Cells.Select(cell => cell.Kind));
        Assert.Equal("int sets = 3;\nint last = 5;", notebook.ParametersCell?.Source);
        Assert.Equal(("csharp", "sql"), (notebook.Cells[1].Language, notebook.Cells[2].Language));
    }

    [Fact]
    public void A_written_notebook_keeps_to_the_format()
    {
        var written = NotebookFile.ToJson(NotebookFile.Parse(FromElsewhere));
        Assert.Empty(NotebookFormatCheck.Problems(written));
    }

    [Fact]
    public void The_format_check_finds_what_is_wrong()
    {
        // The file from elsewhere is of an older format: no identifiers, one identifier twice, one that is none.
        var problems = NotebookFormatCheck.Problems(FromElsewhere.Replace("\"source\": \"# A", "\"id\": \"first\", \"extra\": 1, \"source\": \"# A", StringComparison.Ordinal));
        Assert.Equal(["notebook.nbformat_minor is below 5", "notebook.cells[0].extra must not be there", "notebook.cells[3].id does not match ^[a-zA-Z0-9-_]+$", "the cell id times occurs twice"], problems);
    }

    [Fact]
    public void What_other_programs_put_into_a_file_survives_saving()
    {
        var written = JsonNode.Parse(NotebookFile.ToJson(NotebookFile.Parse(FromElsewhere)))!;
        Assert.Equal("""{"kept":[1,"ä"]}""", written["metadata"]!["somebody"]!.ToJsonString(new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }));
        Assert.Equal("false", written["cells"]![0]!["metadata"]!["deletable"]!.ToJsonString());
        Assert.Equal("kept\n", (string?)written["cells"]![1]!["outputs"]![0]!["text"]![0]);
        Assert.Equal("""{"kernelName":"sql","x":1}""", written["cells"]![2]!["metadata"]!["polyglot_notebook"]!.ToJsonString());
    }

    [Fact]
    public void Attachments_and_outputs_of_other_programs_survive_an_edit_and_the_run_of_another_cell()
    {
        const string json = """
            {
             "metadata": {}, "nbformat": 4, "nbformat_minor": 5,
             "cells": [
              { "cell_type": "markdown", "id": "m", "metadata": {}, "source": "![](attachment:a.png)", "attachments": { "a.png": { "image/png": "iVBORw0KGgo=" } } },
              { "cell_type": "code", "id": "kept", "metadata": { "scrolled": true }, "source": "1", "execution_count": 9,
                "outputs": [{ "output_type": "execute_result", "execution_count": 9, "metadata": { "x": 1 }, "data": { "application/x+json": { "deep": [1] }, "text/plain": "1" } }] },
              { "cell_type": "code", "id": "ran", "metadata": {}, "source": "2", "execution_count": 8, "outputs": [{ "output_type": "stream", "name": "stdout", "text": "old" }] }
             ]
            }
            """;
        var notebook = NotebookFile.Parse(json);
        Assert.Equal("1", Assert.IsType<ShownValue>(Assert.Single(notebook.Cells[1].Outputs.Outputs)).Form(MimeTypes.Text));
        var edited = notebook.With(notebook.Cells[1] with { Source = "1 + 1" }).With(notebook.Cells[2] with { Run = new CellOutputs(1, [new WrittenText("new", false)], null) });
        var written = JsonNode.Parse(NotebookFile.ToJson(edited))!["cells"]!;
        Assert.Empty(NotebookFormatCheck.Problems(NotebookFile.ToJson(edited)));
        Assert.Equal("""{"a.png":{"image/png":"iVBORw0KGgo="}}""", written[0]!["attachments"]!.ToJsonString());
        Assert.Equal(JsonNode.Parse(json)!["cells"]![1]!["outputs"]!.ToJsonString(), written[1]!["outputs"]!.ToJsonString());
        Assert.Equal("""[{"output_type":"stream","name":"stdout","text":["new"]}]""", written[2]!["outputs"]!.ToJsonString());
        Assert.Contains("data:image/png;base64,iVBORw0KGgo=", SquadAnalytics.Notebooks.Reports.CellPage.Prose(notebook.Cells[0]), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_code_cell_names_its_language_for_both_kinds_of_readers()
    {
        var cell = JsonNode.Parse(NotebookFile.ToJson(TestNotebook.Of(TestNotebook.Code("1"))))!["cells"]![0]!;
        Assert.Equal("csharp", (string?)cell["metadata"]!["polyglot_notebook"]!["kernelName"]);
        Assert.Equal("csharp", (string?)cell["metadata"]!["dotnet_interactive"]!["language"]);
    }

    [Fact]
    public void Saving_twice_changes_nothing()
    {
        var once = NotebookFile.ToJson(NotebookFile.Parse(FromElsewhere));
        Assert.Equal(once, NotebookFile.ToJson(NotebookFile.Parse(once)));
    }

    [Theory]
    [InlineData("not json", "not a notebook")]
    [InlineData("[]", "JSON object")]
    [InlineData("""{ "nbformat": 3, "worksheets": [] }""", "format 4")]
    [InlineData("""{ "nbformat": 4 }""", "no list of cells")]
    [InlineData("""{ "nbformat": 4, "cells": [ { "cell_type": "heading" } ] }""", "Cell 1 is of the unknown type 'heading'")]
    [InlineData("""{ "nbformat": 4, "cells": [ 7 ] }""", "Cell 1 is not an object")]
    public void A_file_that_is_no_notebook_is_refused_with_a_reason(string json, string reason)
    {
        var error = Assert.Throws<NotebookFormatException>(() => NotebookFile.Parse(json));
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }
}
