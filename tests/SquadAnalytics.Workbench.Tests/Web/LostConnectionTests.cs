using System.Diagnostics;
using Microsoft.Playwright;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>A page whose server has ended.</summary>
[Collection(SharedBrowser.Name)]
public sealed class LostConnectionTests(TestBrowser browser, ServedWorkbench workbench) : BrowserTests(browser), IClassFixture<ServedWorkbench>
{
    [Fact]
    public async Task A_page_that_has_lost_its_workbench_says_what_is_safe_and_what_to_do()
    {
        var page = await workbench.Open(Browser, "/logbook/type");
        using (var server = Process.GetProcessById(workbench.ProcessId)) server.Kill();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Every cell that you had left is on disk.");
        await Axe.AssertNothing(page);
    }
}
