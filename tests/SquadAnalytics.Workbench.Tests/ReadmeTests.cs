using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using SquadAnalytics.Workbench.Tests.Commands;

namespace SquadAnalytics.Workbench.Tests;

/// <summary>What the README shows works as it stands there.</summary>
public sealed partial class ReadmeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("squad-readme-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_five_lines_lead_from_a_file_to_a_verdict()
    {
        // Six boxers, six weeks; the first one's last test is 40 s faster than all before, far beyond any noise here.
        string[] names = ["Ada", "Bo", "Cy", "Dee", "Eli", "Flo"];
        var lines = from week in Enumerable.Range(0, 6)
                    from name in names
                    let first = 60 + Array.IndexOf(names, name) + (0.3 * (((week * 7) + (name.Length * 3)) % 5)) - (name == "Ada" && week == 5 ? 10 : 0)
                    select string.Create(CultureInfo.InvariantCulture, $"{name},{new DateOnly(2031, 3, 1).AddDays(7 * week):yyyy-MM-dd},{first:0.0},{first + 1:0.0},{first + 1.5:0.0},{first + 2:0.0}");
        File.WriteAllText(Path.Combine(_folder, "winter.csv"), $"Name,Date,Set 1,Set 2,Set 3,Set 4\n{string.Join('\n', lines)}\n");
        var code = CodeBlock().Match(File.ReadAllText(Path.Combine(Root(), "README.md"))).Groups[1].Value;
        Assert.Equal(5, code.Trim().Split('\n').Length);

        Assert.Contains("faster by a worthwhile amount", Executed(code), StringComparison.Ordinal);
    }

    [Fact]
    public void The_query_and_its_figure_run_on_the_sample()
    {
        var readme = File.ReadAllText(Path.Combine(Root(), "README.md"));
        var executed = Executed("string protocol = \"six-five\";", SqlBlock().Match(readme).Groups[1].Value, CodeBlock().Matches(readme)[1].Groups[1].Value);
        Assert.Contains("How do test date and total go together?", executed, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_file_that_the_readme_names_is_there()
    {
        var root = Root();
        foreach (Match link in Link().Matches(File.ReadAllText(Path.Combine(root, "README.md"))))
            Assert.True(Path.Exists(Path.Combine(root, link.Groups[1].Value)), link.Groups[1].Value);
        foreach (var path in new[] { "notebooks/01-why-the-slowdown.ipynb", "sample-data/clipboard", "sample-data/squad", "src/SquadAnalytics.Reporting/Fonts" })
            Assert.True(Path.Exists(Path.Combine(root, path)), path);
    }

    private string Executed(params string[] cells)
    {
        File.WriteAllText(Path.Combine(_folder, "readme.ipynb"), JsonSerializer.Serialize(new
        {
            cells = cells.Select((source, at) => new { cell_type = "code", id = $"cell-{at}", metadata = new { }, execution_count = (int?)null, outputs = Array.Empty<object>(), source }),
            metadata = new { kernelspec = new { display_name = ".NET (C#)", language = "C#", name = ".net-csharp" } },
            nbformat = 4,
            nbformat_minor = 5,
        }));
        var run = CommandRun.In(_folder, "run", "readme.ipynb", "--out", "kept");
        Assert.True(run.ExitCode == 0, run.Errors);
        return File.ReadAllText(Path.Combine(_folder, "kept", "executed.ipynb"));
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "SquadAnalytics.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("The tests run below the repository.");
    }

    [GeneratedRegex("```csharp\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex CodeBlock();

    [GeneratedRegex("```sql\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex SqlBlock();

    [GeneratedRegex(@"\]\((?!https?:)([^)]+)\)")]
    private static partial Regex Link();
}
