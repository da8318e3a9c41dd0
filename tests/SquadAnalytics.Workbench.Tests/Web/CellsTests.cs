using System.Text.Json;
using Microsoft.Playwright;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Tests.Files;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Working on a notebook's cells.</summary>
[Collection(SharedBrowser.Name)]
public sealed class CellsTests(TestBrowser browser, ServedWorkbench workbench) : BrowserTests(browser), IClassFixture<ServedWorkbench>
{
    [Fact]
    public async Task A_student_edits_with_completion_adds_a_query_and_saves_a_file_that_keeps_to_the_format()
    {
        var page = await workbench.Open(Browser, "/cells/01-why-the-slowdown");
        var cell = page.Locator("article.code").Nth(1);
        await cell.Locator("pre.code").ClickAsync();
        await page.Locator(".monaco-editor textarea").First.WaitForAsync();
        await page.Keyboard.PressAsync("Control+Home");
        await page.Keyboard.TypeAsync("var days = logbook.Squ");
        await Assertions.Expect(page.Locator(".suggest-widget.visible .monaco-list-row").First).ToContainTextAsync("Squad", new() { Timeout = 180_000 });
        await Axe.AssertNothing(page);
        await page.Keyboard.PressAsync("Enter");
        await page.Keyboard.TypeAsync(".Sessions.Count;\n");
        await Axe.AssertNothing(page);
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("article.selected")).ToBeFocusedAsync();
        await Assertions.Expect(cell.Locator("pre.code")).ToContainTextAsync("var days = logbook.Squad.Sessions.Count;");

        // Wrong turns: a cell deleted and brought back, a reload before saving.
        await page.Keyboard.PressAsync("Delete");
        await Assertions.Expect(page.GetByText("var days = logbook")).ToHaveCountAsync(0);
        await page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(cell.Locator("pre.code")).ToContainTextAsync("var days");
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText("Here is what was changed and not saved yet.")).ToBeVisibleAsync();
        await Assertions.Expect(cell.Locator("pre.code")).ToContainTextAsync("var days");

        await cell.FocusAsync();
        await cell.GetByRole(AriaRole.Button, new() { Name = "SQL", Exact = true }).ClickAsync();
        await page.Locator(".monaco-editor textarea").First.WaitForAsync();
        await page.Keyboard.TypeAsync("select count(*) as tests from sessions");
        await page.Keyboard.PressAsync("Control+Enter");
        var query = page.Locator("article.code").Nth(2);
        await Assertions.Expect(query.Locator("iframe.shown").First.ContentFrame.GetByText("tests").First).ToBeVisibleAsync(new() { Timeout = 180_000 });
        await page.Keyboard.PressAsync("Escape");
        await Axe.AssertNothing(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("saved at");

        var saved = await File.ReadAllTextAsync(Own("01-why-the-slowdown"));
        Assert.Empty(NotebookFormatCheck.Problems(saved));
        var notebook = NotebookFile.Parse(saved);
        Assert.Contains(notebook.Cells, one => one.Source.StartsWith("var days = logbook.Squad.Sessions.Count;", StringComparison.Ordinal));
        Assert.Contains(notebook.Cells, one => one.Language == "sql" && one.Outputs.Outputs.Count == 1);
        Assert.DoesNotContain("var days", await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "notebooks", "01-why-the-slowdown.ipynb")), StringComparison.Ordinal);

        // What was written here is trusted when it is opened again.
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true })).ToBeEnabledAsync();
    }

    [Fact]
    public async Task An_untrusted_notebook_runs_nothing_until_a_person_says_so()
    {
        var marker = Path.Combine(workbench.Folder, "it-ran");
        Write("from-elsewhere", $"System.IO.File.WriteAllText({JsonSerializer.Serialize(marker)}, \"\");");
        var before = Children();
        var page = await workbench.Open(Browser, "/cells/from-elsewhere");
        await Assertions.Expect(page.GetByText("This notebook was not written here.")).ToBeVisibleAsync();
        await Axe.AssertNothing(page);
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true })).ToBeDisabledAsync();
        var cell = page.Locator("article.code").First;
        await cell.FocusAsync();
        await page.Keyboard.PressAsync("Control+Enter");
        await page.Keyboard.PressAsync("Shift+Enter");
        await cell.Locator("pre.code").ClickAsync();
        await page.Locator(".monaco-editor textarea").First.WaitForAsync();
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("\nSystem.");
        await page.Keyboard.PressAsync("Control+Space");
        await Task.Delay(3000);
        Assert.False(File.Exists(marker));
        Assert.Equal(before, Children());
        await Assertions.Expect(page.Locator(".suggest-widget.visible .monaco-list-row")).ToHaveCountAsync(0);

        await page.GetByRole(AriaRole.Button, new() { Name = "Go back to the saved version" }).Or(page.GetByRole(AriaRole.Button, new() { Name = "Undo" })).First.ClickAsync();
        await ServedWorkbench.Consent(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true }).ClickAsync();
        await Waiting.Until(() => File.Exists(marker));

        // The same code is known from now on; other code under the same name is not.
        await page.ReloadAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true })).ToBeEnabledAsync();
        Write("from-elsewhere", "System.Environment.Exit(1);");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show the saved version" }).ClickAsync();
        await Assertions.Expect(page.GetByText("This notebook was not written here.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Script_in_what_a_cell_shows_does_not_run()
    {
        Write("picture", """
            display(Microsoft.DotNet.Interactive.Formatting.PocketViewTags.div(1));
            var svg = "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9' onload='parent.document.title=`taken`'><script>parent.document.title='taken'</script><rect width='9' height='9'/></svg><img src='x' onerror='parent.document.title=`taken`'/>";
            DisplayExtensions.DisplayAs(svg, "text/html");
            """);
        var page = await workbench.Open(Browser, "/cells/picture");
        await ServedWorkbench.Consent(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true }).ClickAsync();
        var frame = page.Locator("iframe.shown").First.ContentFrame;
        await Assertions.Expect(frame.Locator("svg")).ToBeVisibleAsync(new() { Timeout = 180_000 });
        Assert.Equal("picture", await page.TitleAsync());
        var shown = await page.Locator("iframe.shown").First.GetAttributeAsync("srcdoc");
        Assert.DoesNotContain("onload", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", shown, StringComparison.Ordinal);
        Assert.Equal("allow-same-origin", await page.Locator("iframe.shown").First.GetAttributeAsync("sandbox"));
    }

    [Fact]
    public async Task A_change_in_another_window_or_on_disk_is_told_before_it_is_written_over()
    {
        Write("shared", "1 + 1");
        var one = await workbench.Open(Browser, "/cells/shared");
        var two = await one.Context.NewPageAsync();
        await two.GotoAsync(one.Url);
        await AddText(one, "from the first window");
        await one.Keyboard.PressAsync("Control+s");
        await Assertions.Expect(one.GetByRole(AriaRole.Status)).ToContainTextAsync("saved at");
        await Assertions.Expect(two.GetByText("This notebook was saved in another window.")).ToBeVisibleAsync();
        await two.GetByRole(AriaRole.Button, new() { Name = "Show the saved version" }).ClickAsync();
        await Assertions.Expect(two.GetByText("from the first window")).ToBeVisibleAsync();

        await AddText(two, "from the second window");
        Write("shared", "2 + 2");
        await two.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await Assertions.Expect(two.GetByText("This notebook was changed by another program.")).ToBeVisibleAsync();
        await Axe.AssertNothing(two);
        Assert.Contains("2 + 2", await File.ReadAllTextAsync(Own("shared")), StringComparison.Ordinal);
        await two.GetByRole(AriaRole.Button, new() { Name = "Save this one over it" }).ClickAsync();
        await Assertions.Expect(two.GetByRole(AriaRole.Status)).ToContainTextAsync("saved at");
        Assert.Contains("from the second window", await File.ReadAllTextAsync(Own("shared")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cell_that_never_ends_or_ends_its_process_leaves_the_page_and_other_notebooks_alone()
    {
        Write("endless", "while (true) { }");
        Write("leaving", "Environment.Exit(3);");
        var page = await workbench.Open(Browser, "/cells/endless");
        await ServedWorkbench.Consent(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("running", new() { Exact = true })).ToBeVisibleAsync(new() { Timeout = 180_000 });

        var other = await page.Context.NewPageAsync();
        await other.GotoAsync(new Uri(workbench.Address, "/cells/leaving").AbsoluteUri);
        await ServedWorkbench.Consent(other);
        await other.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true }).ClickAsync();
        await Assertions.Expect(other.GetByRole(AriaRole.Alert)).ToContainTextAsync("values are gone", new() { Timeout = 180_000 });
        await Assertions.Expect(other.Locator(".fault")).ToContainTextAsync("exit code 3");
        await Axe.AssertNothing(other);

        await page.GetByRole(AriaRole.Button, new() { Name = "Interrupt" }).ClickAsync();
        await Assertions.Expect(page.Locator(".fault")).ToContainTextAsync("Stopped by request.");
    }

    private static async Task AddText(IPage page, string text)
    {
        var first = page.Locator("article").First;
        await first.FocusAsync();
        await first.GetByRole(AriaRole.Button, new() { Name = "Text", Exact = true }).ClickAsync();
        await page.Locator("textarea.prose-edit").FillAsync(text);
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator(".prose", new() { HasText = text })).ToBeVisibleAsync();
    }

    private string Own(string name) => Path.Combine(workbench.Folder, "logbook", "notebooks", name + ".ipynb");

    private void Write(string name, string code)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Own(name))!);
        NotebookFile.Write(new Notebook([new NotebookCell(CellKind.Code, code)]), Own(name));
    }

    // Processes that the server has started.
    private int Children() => Directory.EnumerateDirectories("/proc").Count(folder =>
    {
        try
        {
            return File.ReadAllText(Path.Combine(folder, "stat")).Split(')')[^1].Split(' ', StringSplitOptions.RemoveEmptyEntries)[1] == workbench.ProcessId.ToString(System.Globalization.CultureInfo.InvariantCulture);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or IndexOutOfRangeException)
        {
            return false;
        }
    });
}
