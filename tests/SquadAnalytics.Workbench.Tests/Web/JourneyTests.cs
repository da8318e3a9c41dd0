using Microsoft.Playwright;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Whole journeys of a coach who writes no code, each with a wrong turn in it.</summary>
[Collection(SharedBrowser.Name)]
public sealed class JourneyTests(TestBrowser browser, ServedWorkbench workbench) : IClassFixture<ServedWorkbench>
{
    [Fact]
    public async Task A_file_with_a_mistake_is_mended_kept_and_taken_back()
    {
        var page = await Open("/logbook/files");
        var name = LogbookSquad().Athletes[0].DisplayName;
        await page.GetByLabel("or paste from a spreadsheet").FillAsync($"Name\tDate\tProtocol\tSet 1\tSet 2\tSet 3\n{name}\t2035-03-01\tTall Three\t61.2\t1:72\t63.0\n");
        await page.GetByLabel("or paste from a spreadsheet").BlurAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Read what was pasted" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("1 rows read: 0 kept, 1 refused");
        await page.GetByLabel("Set 2", new() { Exact = true }).FillAsync("1:02");
        await page.GetByRole(AriaRole.Button, new() { Name = "Read again" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep 1 sessions" }).ClickAsync();
        await Assertions.Expect(page.GetByText("1 sessions are in the logbook.")).ToBeVisibleAsync();
        Assert.Contains(LogbookSquad().Sessions, session => session.Date == new DateOnly(2035, 3, 1));

        await page.GotoAsync(new Uri(workbench.Address, "/logbook").AbsoluteUri);
        await page.Locator("fluent-button", new() { HasText = "Take back: import" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Thursday 1 March 2035" })).ToHaveCountAsync(0);
        Assert.DoesNotContain(LogbookSquad().Sessions, session => session.Date == new DateOnly(2035, 3, 1));
    }

    [Fact]
    public async Task What_was_typed_is_there_after_a_reload_and_then_kept()
    {
        var page = await Open("/logbook/type");
        await page.GetByLabel("Date").FillAsync("2035-04-05");
        await page.GetByLabel("Date").BlurAsync();
        await page.GetByLabel("Protocol").SelectOptionAsync(["tall-three"]);
        var first = page.Locator("input[data-grid-row='0'][data-grid-column='1']");
        await Assertions.Expect(first).ToBeVisibleAsync();
        await first.FillAsync("70.5");
        await first.PressAsync("Enter");
        await Assertions.Expect(page.Locator("input[data-grid-row='1'][data-grid-column='1']")).ToBeFocusedAsync();

        await page.ReloadAsync();
        await Assertions.Expect(page.GetByText("Here is what was typed for 5 April 2035")).ToBeVisibleAsync();
        await Assertions.Expect(first).ToHaveValueAsync("70.5");
        var second = page.Locator("input[data-grid-row='0'][data-grid-column='2']");
        await second.FillAsync("1:72");
        await second.BlurAsync();
        await page.Locator("fluent-button", new() { HasText = "Keep the session" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("cannot be read yet");
        await second.FillAsync("1:12");
        await second.BlurAsync();
        await page.Locator("fluent-button", new() { HasText = "Keep the session" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Thursday 5 April 2035" })).ToBeVisibleAsync();
        Assert.Contains(LogbookSquad().Sessions, session => session.Date == new DateOnly(2035, 4, 5) && session.TimesSeconds.SequenceEqual([70.5, 72]));
    }

    [Fact]
    public async Task A_question_is_answered_and_its_report_is_kept()
    {
        var page = await Open("/questions/01-why-the-slowdown");
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Findings" }).First).ToBeVisibleAsync(new() { Timeout = 300_000 });
        await Assertions.Expect(page.Locator("ol.findings > li").First).ToContainTextAsync("tests, sets");
        await page.GotoAsync(new Uri(workbench.Address, "/reports").AbsoluteUri);
        var report = page.GetByRole(AriaRole.Link, new() { Name = "Why does this boxer slow down?" }).First;
        await Assertions.Expect(report).ToBeVisibleAsync();
        var opened = await page.Context.RunAndWaitForPageAsync(() => report.ClickAsync());
        await Assertions.Expect(opened.GetByRole(AriaRole.Heading, new() { Name = "Findings" })).ToBeVisibleAsync();
    }

    private Squad LogbookSquad()
    {
        using var logbook = Logbook.Open(Path.Combine(workbench.Folder, "logbook"));
        return logbook.Squad;
    }

    private async Task<IPage> Open(string place)
    {
        var context = await browser.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 1280, Height = 900 } });
        context.SetDefaultTimeout(90_000);
        var page = await context.NewPageAsync();
        await page.GotoAsync((await workbench.NextFirstAddress()).AbsoluteUri);
        await page.GotoAsync(new Uri(workbench.Address, place).AbsoluteUri);
        await page.Locator("h1").First.WaitForAsync();
        return page;
    }
}
