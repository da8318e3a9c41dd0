using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Storage;
using static SquadAnalytics.Notebooks.Tests.TestNotebook;

namespace SquadAnalytics.Notebooks.Tests.Hosting;

/// <summary>In which forms the library's values come out of a notebook's process.</summary>
public sealed class FormatterTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("squad-forms-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Each_kind_of_value_shows_in_the_forms_that_reports_and_files_are_made_of()
    {
        using (var logbook = Logbook.Create(Path.Combine(_folder, "logbook"), "Quay"))
        {
            logbook.Commit(new LogbookChange("squad")
            {
                Athletes = [new Athlete("a1", "Bo Lindqvist", "BL")],
                Protocols = [new Protocol("quay-v1", "Quay circuit", [], 4, new Seconds(120))],
            });
        }
        var cells = await ShownAsync(
            "new Table(\"Times\", [new(\"set\"), TableColumn.Figures(\"time\", \"s\")], [[\"first\", TableCell.Figure(62.4, 1)]])",
            "new HowWasItPaced(\"BL\", Session.FromTimes(\"s1\", \"a1\", new DateOnly(2031, 3, 4), logbook.Squad.Protocols[0], 62.4, 63.1, 64, 69))",
            "new Findings(new Finding(\"Slower.\"))",
            "new Estimate(1.5, Unit.Seconds, 3, \"mean\") { Notes = [\"a < b\"] }",
            "Answer<Estimate> none = new NotEstimable(\"the slope\", Refusal.TooFewSets, 3, 2, \"sets\");\nnone",
            "logbook",
            "new Seconds(62.4)",
            "Frame.Of(new[] { new { Code = \"A<1\", Best = new Seconds(62.4) } })",
            "Frame.Of(new[] { new { Code = \"A1\", Day = new DateOnly(2031, 3, 4) } }).ToDataFrame()",
            "var tried = Session.FromTimes(\"s1\", \"a1\", new DateOnly(2031, 3, 4), logbook.Squad.Protocols[0], 62.4, 63.1, 64, 69);\nFatigueIndices.Summarize(tried)",
            "WorkAndRest.Summarize(tried).GetOrThrow().Sets",
            "logbook.Squad.Athletes",
            "ClipboardImport.Read(ImportSource.FromText(\"x.csv\", \"date,athlete,set 1\\n2031-03-04,Bo,-5\\n\"))",
            "new InvalidOperationException(\"a < b\", new FormatException(\"inside\"))",
            "new NotEstimable(\"the slope\", Refusal.TooFewSets, 3, 2, \"sets\")",
            "FatigueIndices.Summarize(Session.FromTimes(\"s2\", \"a1\", new DateOnly(2031, 3, 4), logbook.Squad.Protocols[0], 62.4))",
            "new Answer<HowWasItPaced>(new HowWasItPaced(\"BL\", tried))");

        Assert.Equal("first,62.4", cells[0].Form(MimeTypes.Csv)!.Split('\n')[1].Trim());
        Assert.Contains("<th scope=\"row\">first</th>", cells[0].Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.Contains("aria-label=", cells[1].Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.Contains("<desc>", cells[1].Form(MimeTypes.Svg), StringComparison.Ordinal);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], Convert.FromBase64String(cells[1].Form(MimeTypes.Png)!)[..4]);
        Assert.Contains("\"sentence\":\"Slower.\"", cells[2].Form(MimeTypes.Finding), StringComparison.Ordinal);
        Assert.Equal("<p>1.50 s</p>\n<p>mean, n = 3</p>\n<p>a &lt; b</p>\n", cells[3].Form(MimeTypes.Html));
        Assert.Equal("<p>Not enough data for the slope: needs 3 sets, has 2 sets.</p>\n", cells[4].Form(MimeTypes.Html));
        Assert.StartsWith("Quay: 1 athletes, 0 sessions", cells[5].Form(MimeTypes.Text), StringComparison.Ordinal);
        Assert.DoesNotContain("Lindqvist", cells[5].Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.Equal("62.40 s", cells[6].Form(MimeTypes.Text));
        Assert.Contains("<th scope=\"row\">A&lt;1</th><td class=\"number\">62.4</td>", cells[7].Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.Equal("code,best_s\nA<1,62.4\n", cells[7].Form(MimeTypes.Csv)!.ReplaceLineEndings("\n"));
        Assert.Contains("<td>2031-03-04</td>", cells[8].Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.Contains("<caption>Fatigue indices</caption>", cells[9].Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.Matches("Decrement +3[.]6 %", cells[9].Form(MimeTypes.Text));
        Assert.StartsWith("set,start_s,work_s,finish_s", cells[10].Form(MimeTypes.Csv), StringComparison.Ordinal);
        Assert.Contains("<th scope=\"row\">BL</th>", cells[11].Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.DoesNotContain("Lindqvist", cells[11].Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.Contains("1 row read: 0 kept, 1 refused", cells[12].Form(MimeTypes.Html), StringComparison.Ordinal);
        Assert.Contains("cannot be negative", cells[12].Form(MimeTypes.Text), StringComparison.Ordinal);
        Assert.Equal("<p>InvalidOperationException: a &lt; b (FormatException: inside)</p>\n", cells[13].Form(MimeTypes.Html));
        Assert.Equal("<p>Not enough data for the slope: needs 3 sets, has 2 sets.</p>\n", cells[14].Form(MimeTypes.Html));
        Assert.Contains("Not enough data for the fatigue indices", cells[15].Form(MimeTypes.Text), StringComparison.Ordinal);
        Assert.Equal(cells[1].Form(MimeTypes.Svg), cells[16].Form(MimeTypes.Svg));
        Assert.Equal(cells[1].Form(MimeTypes.Html), cells[16].Form(MimeTypes.Html));
        Assert.All(cells, cell => Assert.False(string.IsNullOrEmpty(cell.Form(MimeTypes.Text))));
    }

    private async Task<IReadOnlyList<ShownValue>> ShownAsync(params string[] codes)
    {
        await using var kernels = new KernelSource(TestKernel.Command, TestKernel.Tight);
        var notebook = Of([.. codes.Select(code => Code(code))]);
        var run = await new NotebookRunner(kernels, TimeProvider.System).RunAsync(new RunRequest("forms", notebook, _folder) { LogbookFolder = Path.Combine(_folder, "logbook") });
        Assert.Null(run.Problem);
        Assert.Equal(64, run.DataFingerprint?.Length);
        return [.. run.Cells.Select(cell => Assert.IsType<ShownValue>(Assert.Single(cell.Result.Outputs)))];
    }
}
