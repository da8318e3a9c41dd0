using System.Text.Json.Nodes;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Reports;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Notebooks.Tests.Files;
using static SquadAnalytics.Notebooks.Tests.TestNotebook;

namespace SquadAnalytics.Notebooks.Tests.Reports;

public sealed class KeptRunTests : IDisposable
{
    private const string Attack =
        "<p onclick=\"alert(1)\">shown</p><script>alert(2)</script><svg xmlns=\"http://www.w3.org/2000/svg\"><script>alert(3)</script>" +
        "<a href=\"javascript:alert(4)\"><rect width=\"1\" height=\"1\" fill=\"url(http://elsewhere.example/x)\"/></a><image href=\"http://elsewhere.example/y\"/></svg>";

    private readonly string _folder = Directory.CreateTempSubdirectory("squad-kept-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_page_says_findings_first_and_folds_code_away()
    {
        var page = File.ReadAllText(KeptRun.Write(Finished(), Path.Combine(_folder, "run")));
        var finding = page.IndexOf("slower from set four", StringComparison.Ordinal);
        Assert.True(finding > 0 && finding < page.IndexOf("Prose of the notebook", StringComparison.Ordinal));
        Assert.Contains("<details class=\"working\"><summary>Working (cell 1, C#)</summary>", page, StringComparison.Ordinal);
        Assert.Contains("<dt>level</dt><dd>0.9</dd>", page, StringComparison.Ordinal);
        Assert.Contains("0123abc", page, StringComparison.Ordinal);
        Assert.Contains("head knock", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_that_a_cell_shows_can_run_or_reach_outside()
    {
        var page = File.ReadAllText(KeptRun.Write(Finished(), Path.Combine(_folder, "run")));
        Assert.Contains("<p>shown</p>", page, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
        foreach (var trace in (string[])["<script", "onclick", "javascript:", "elsewhere.example", "<img src=\"http"]) Assert.DoesNotContain(trace, page, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void The_executed_notebook_keeps_to_the_format_and_holds_the_outputs()
    {
        KeptRun.Write(Finished(), Path.Combine(_folder, "run"));
        var json = File.ReadAllText(Path.Combine(_folder, "run", "executed.ipynb"));
        Assert.Empty(NotebookFormatCheck.Problems(json));
        var cells = JsonNode.Parse(json)!["cells"]!;
        Assert.Equal(1, (int?)cells[1]!["execution_count"]);
        Assert.Equal(["stream", "display_data", "execute_result"], cells[1]!["outputs"]!.AsArray().Select(output => (string?)output!["output_type"]));
        Assert.Equal("error", (string?)cells[2]!["outputs"]![0]!["output_type"]);
        Assert.Null(cells[3]!["execution_count"]);
    }

    [Fact]
    public void Figures_tables_and_the_record_are_files_of_their_own()
    {
        KeptRun.Write(Finished(), Path.Combine(_folder, "run"));
        Assert.Equal(
            ["executed.ipynb", "figures/figure-1.png", "figures/figure-1.svg", "report.html", "run.json", "tables/table-1.csv"],
            Directory.EnumerateFiles(Path.Combine(_folder, "run"), "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(Path.Combine(_folder, "run"), file).Replace('\\', '/')).Order(StringComparer.Ordinal));
        var record = JsonNode.Parse(File.ReadAllText(Path.Combine(_folder, "run", "run.json")))!;
        Assert.Equal("cell 2, line 1 (throw): Too slow.", (string?)record["problem"]);
        Assert.Equal(["Completed", "Failed", "NotRun"], record["cells"]!.AsArray().Select(cell => (string?)cell!["ending"]));
    }

    [Fact]
    public void A_kept_run_is_replaced_but_nothing_else_is()
    {
        KeptRun.Write(Finished(), Path.Combine(_folder, "run"));
        KeptRun.Write(Finished(), Path.Combine(_folder, "run"));
        File.WriteAllText(Path.Combine(_folder, "mine.txt"), "precious");
        Assert.Contains("holds something else", Assert.Throws<IOException>(() => KeptRun.Write(Finished(), _folder)).Message, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_folder, "mine.txt")));
    }

    [Theory]
    [InlineData("run.json", "\"cells\": [", "\"cells\": null, \"others\": [", "cells")]
    [InlineData("run.json", "\"findings\": [", "\"findings\": [null,", "empty place")]
    [InlineData("run.json", "\"ending\": \"Completed\"", "\"ending\": \"Bored\"", "'Bored' is no ending")]
    [InlineData("run.json", "\"seconds\": 0.1", "\"seconds\": 1e300", "no time")]
    [InlineData("run.json", "\"sentence\": \"B07", "\"sentence\": null, \"other\": \"B07", "sentence")]
    [InlineData("run.json", "\"notebook\": \"why\"", "\"book\": \"why\"", "notebook")]
    [InlineData("run.json", "{", "[", "cannot be read")]
    [InlineData("executed.ipynb", "\"cells\": [", "\"cells\": null, \"others\": [", "no list of cells")]
    [InlineData("executed.ipynb", "\"cell_type\": \"code\"", "\"cell_type\": \"raw\"", "2 code cells, but run.json beside it tells of 3")]
    public void A_damaged_run_is_refused_with_the_file_and_what_is_wrong_with_it(string file, string was, string becomes, string told)
    {
        var folder = Path.Combine(_folder, "run");
        KeptRun.Write(Finished(), folder);
        Assert.Equal(3, KeptRun.Read(folder).Cells.Count);
        var path = Path.Combine(folder, file);
        var text = File.ReadAllText(path);
        var at = text.IndexOf(was, StringComparison.Ordinal);
        Assert.True(at >= 0, text);
        File.WriteAllText(path, string.Concat(text.AsSpan(0, at), becomes, text.AsSpan(at + was.Length)));
        var error = Assert.Throws<IOException>(() => KeptRun.Read(folder));
        Assert.Contains(path, error.Message, StringComparison.Ordinal);
        Assert.Contains(told, error.Message, StringComparison.Ordinal);
    }

    private static NotebookRun Finished()
    {
        var notebook = Of(Prose("# Why slower?\n\nWhere does it break?\n\nProse of the notebook"), Code("1"), Code("throw"), Code("2"));
        CellOutput[] outputs =
        [
            new WrittenText("written\n", false),
            new ShownValue([new(MimeTypes.Html, Attack), new(MimeTypes.Svg, "<svg xmlns=\"http://www.w3.org/2000/svg\"/>"), new(MimeTypes.Png, "iVBORw0="), new(MimeTypes.Csv, "a,b\r\n")], false),
            new ShownValue([new(MimeTypes.Finding, """[{"sentence":"B07 is slower from set four.","basis":"t","notes":[]}]"""), new(MimeTypes.Text, "B07")], true),
        ];
        CellRun[] cells =
        [
            new(1, notebook.Cells[1], new(CellEnding.Completed, outputs, null, TimeSpan.FromSeconds(0.1))),
            new(2, notebook.Cells[2], new(CellEnding.Failed, [], new CellFault("Too slow.") { Line = 1, Excerpt = "throw" }, TimeSpan.FromSeconds(0.1))),
            new(3, notebook.Cells[3], new(CellEnding.NotRun, [], null, TimeSpan.Zero)),
        ];
        return new NotebookRun("why", notebook, cells)
        {
            Parameters = [new("level", SquadAnalytics.Notebooks.Parameters.ParameterType.Number, false, "0.9")],
            Findings = FindingForm.ReadAll(cells),
            DataFingerprint = "0123abc",
            Identity = new("engine 1", "runtime 2", "library 3"),
        };
    }
}
