using System.Text.Json;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>How a notebook in the repository has to read: prose first, one parameters cell, short cells, no stored outputs.</summary>
public sealed class NotebookFileTests
{
    private const int MostLines = 20;

    public static TheoryData<string> Files =>
        [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "notebooks"), "*.ipynb").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void Prose_comes_first_and_one_cell_holds_the_parameters(string file)
    {
        var cells = Cells(file);
        Assert.Equal("markdown", cells[0].GetProperty("cell_type").GetString());
        Assert.StartsWith("# ", Source(cells[0]), StringComparison.Ordinal);
        Assert.Single(cells, cell => cell.GetProperty("metadata").TryGetProperty("tags", out var tags) && tags.EnumerateArray().Any(tag => tag.GetString() == "parameters"));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void No_output_is_stored(string file)
    {
        foreach (var cell in Code(file))
        {
            Assert.Equal(JsonValueKind.Null, cell.GetProperty("execution_count").ValueKind);
            Assert.Equal(0, cell.GetProperty("outputs").GetArrayLength());
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Cells_are_short_and_hold_no_statistics_of_their_own(string file)
    {
        foreach (var source in Code(file).Select(Source))
        {
            Assert.InRange(source.Split('\n').Length, 1, MostLines);
            foreach (var banned in new[] { "Math.Sqrt", ".Average(", "class ", "for (", "while (" }) Assert.DoesNotContain(banned, source, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_cell_has_an_id_of_its_own(string file)
    {
        var ids = Cells(file).Select(cell => cell.GetProperty("id").GetString()).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void The_second_cell_makes_Jupyter_like_the_workbench_and_SQL_cells_name_their_kernel_twice(string file)
    {
        var cells = Cells(file);
        Assert.Equal("jupyter-setup", cells[1].GetProperty("metadata").GetProperty("tags")[0].GetString());
        Assert.Contains("#r \"nuget: SquadAnalytics.Notebooks, 0.1.0\"", Source(cells[1]), StringComparison.Ordinal);
        foreach (var cell in Code(file))
            Assert.Equal(Source(cell).StartsWith("#!sql", StringComparison.Ordinal), cell.GetProperty("metadata").GetProperty("polyglot_notebook").GetProperty("kernelName").GetString() == "sql");
    }

    private static List<JsonElement> Code(string file) => [.. Cells(file).Where(cell => cell.GetProperty("cell_type").GetString() == "code")];

    private static List<JsonElement> Cells(string file)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "notebooks", file)));
        return [.. document.RootElement.GetProperty("cells").EnumerateArray().Select(cell => cell.Clone())];
    }

    private static string Source(JsonElement cell) => string.Concat(cell.GetProperty("source").EnumerateArray().Select(line => line.GetString()));
}
