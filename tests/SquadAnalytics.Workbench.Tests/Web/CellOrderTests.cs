using Microsoft.Playwright;
using SquadAnalytics.Notebooks.Files;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>The order in which a notebook's cells stand and run.</summary>
[Collection(SharedBrowser.Name)]
public sealed class CellOrderTests(TestBrowser browser, ServedWorkbench workbench) : BrowserTests(browser), IClassFixture<ServedWorkbench>
{
    // Each notebook's own code, which nobody has agreed to yet.
    private static string[] SourcesOf(string name) => [$"var first = 20; // {name}", "var second = first + 1;", "second * 2"];

    [Fact]
    public async Task After_a_restart_values_are_gone_until_the_cells_are_run_from_the_first_one_on()
    {
        var page = await Open("restarted");
        await Button(page, "Run all").ClickAsync();
        await Assertions.Expect(Shown(page)).ToContainTextAsync("42", new() { Timeout = 180_000 });
        await Assertions.Expect(page.GetByText("Values in scope")).ToBeVisibleAsync();
        await Button(page, "Restart").ClickAsync();
        await Assertions.Expect(page.GetByText("Values in scope")).ToHaveCountAsync(0);

        // Wrong turn: from the second cell on, which needs what the first had made.
        await Command(page, 1, "Run from here");
        await Assertions.Expect(page.Locator("article.code").Nth(1).Locator(".fault")).ToContainTextAsync("first", new() { Timeout = 180_000 });
        await Command(page, 0, "Run from here");
        await Assertions.Expect(page.Locator(".fault")).ToHaveCountAsync(0, new() { Timeout = 180_000 });
        await Assertions.Expect(Shown(page)).ToContainTextAsync("42");
    }

    [Fact]
    public async Task A_cell_is_moved_by_button_and_key_taken_back_and_saved_in_its_place()
    {
        var page = await Open("moved");
        var sources = SourcesOf("moved");
        var cells = page.Locator("article.code pre.code");
        await page.Locator("article.code").Nth(2).FocusAsync();
        await page.Keyboard.PressAsync("Alt+ArrowUp");
        await Assertions.Expect(cells).ToHaveTextAsync([sources[0], sources[2], sources[1]]);
        await page.Keyboard.PressAsync("Alt+ArrowUp");
        await Assertions.Expect(cells).ToHaveTextAsync([sources[2], sources[0], sources[1]]);

        // Wrong turn: one place too far, taken back; then with the button, and a reload before saving.
        await Button(page, "Undo").ClickAsync();
        await Assertions.Expect(cells).ToHaveTextAsync([sources[0], sources[2], sources[1]]);
        await Command(page, 0, "Down");
        await Assertions.Expect(cells).ToHaveTextAsync([sources[2], sources[0], sources[1]]);
        await page.ReloadAsync();
        await Assertions.Expect(cells).ToHaveTextAsync([sources[2], sources[0], sources[1]]);
        await Button(page, "Save").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("saved at");
        Assert.Equal([sources[2], sources[0], sources[1]], NotebookFile.Read(Path.Combine(Folder, "moved.ipynb")).Cells.Select(cell => cell.Source));
    }

    private string Folder => Path.Combine(workbench.Folder, "logbook", "notebooks");

    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    private static ILocator Shown(IPage page) => page.Locator("article.code").Nth(2).Locator("iframe.shown").ContentFrame.Locator("body");

    private static async Task Command(IPage page, int cell, string name)
    {
        var chosen = page.Locator("article.code").Nth(cell);
        await chosen.FocusAsync();
        await chosen.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).ClickAsync();
    }

    private async Task<IPage> Open(string name)
    {
        Directory.CreateDirectory(Folder);
        NotebookFile.Write(new Notebook([.. SourcesOf(name).Select(source => new NotebookCell(CellKind.Code, source))]), Path.Combine(Folder, name + ".ipynb"));
        var page = await workbench.Open(Browser, $"/cells/{name}");
        await ServedWorkbench.Consent(page);
        return page;
    }
}
