using System.Text.Json;
using Microsoft.Playwright;
using SquadAnalytics.Notebooks.Files;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>A notebook that lies idle, on a server that gives processes up after seconds.</summary>
[Collection(SharedBrowser.Name)]
public sealed class IdleTests(TestBrowser browser, ImpatientWorkbench workbench) : BrowserTests(browser), IClassFixture<ImpatientWorkbench>
{
    [Fact]
    public async Task An_idle_notebook_gives_its_process_up_visibly_and_one_click_runs_it_again()
    {
        var marker = Path.Combine(workbench.Folder, "runs");
        var folder = Path.Combine(workbench.Folder, "logbook", "notebooks");
        Directory.CreateDirectory(folder);
        NotebookFile.Write(new Notebook([new NotebookCell(CellKind.Code, $"System.IO.File.AppendAllText({JsonSerializer.Serialize(marker)}, \"x\");")]), Path.Combine(folder, "counting.ipynb"));
        var page = await workbench.Open(Browser, "/cells/counting");
        await ServedWorkbench.Consent(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Run all", Exact = true }).ClickAsync();
        await Waiting.Until(() => File.Exists(marker));
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("process was given up");
        await Assertions.Expect(page.GetByText("Values in scope")).ToHaveCountAsync(0);
        await Axe.AssertNothing(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Run all cells again" }).ClickAsync();
        await Waiting.Until(() => new FileInfo(marker).Length == 2);
    }
}

/// <summary>A server that gives idle processes up after seconds.</summary>
public sealed class ImpatientWorkbench : ServedWorkbench
{
    /// <inheritdoc />
    protected override IReadOnlyList<string> MoreArguments => ["--idle-minutes", "0.05"];
}
