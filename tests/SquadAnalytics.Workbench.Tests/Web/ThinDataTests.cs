using Microsoft.Playwright;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Questions put to a logbook with two tests in it, each boxer's first and only one: what is missing is said in the trade's words.</summary>
[Collection(SharedBrowser.Name)]
public sealed class ThinDataTests(TestBrowser browser, ThinWorkbench workbench) : BrowserTests(browser), IClassFixture<ThinWorkbench>
{
    [Theory]
    [InlineData("00-start-here", "has none. Tests left out: 1 as familiarisation")]
    [InlineData("01-why-the-slowdown", "has none. Tests left out: 1 as familiarisation")]
    [InlineData("02-this-week", "has none. Tests left out: 2 as familiarisation")]
    [InlineData("04-season-review", "has none. Tests left out: 2 as familiarisation")]
    [InlineData("05-where-everyone-stands", "needs 3 athletes with two tests")]
    [InlineData("06-plan-the-tests", "has none. Tests left out: 2 as familiarisation")]
    public async Task A_question_says_what_it_needs_and_what_is_there(string name, string needed)
    {
        var page = await workbench.Open(Browser, "/questions/" + name);
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
        var answer = page.Locator("section[aria-label=Answer]");
        await Assertions.Expect(answer).ToContainTextAsync(needed, new() { Timeout = 300_000 });
        await Axe.AssertNothing(page);
        var report = answer.Locator("iframe.report").ContentFrame.Locator("body");
        await Assertions.Expect(report).ToContainTextAsync(needed);
        foreach (var text in new[] { await answer.InnerTextAsync(), await report.InnerTextAsync() })
        {
            Assert.DoesNotContain("Parameter '", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Index was", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_question_about_two_blocks_asks_for_blocks_first()
    {
        var page = await workbench.Open(Browser, "/questions/03-two-blocks");
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "two training blocks" })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true })).ToHaveCountAsync(0);
        await Axe.AssertNothing(page);
    }
}

/// <summary>A server on a logbook with two boxers, a protocol without bands and one test of each boxer.</summary>
public sealed class ThinWorkbench : ServedWorkbench
{
    /// <inheritdoc />
    protected override void Prepare(string folder)
    {
        var protocol = new Protocol("first", "First circuit", [], 6, new Seconds(100));
        Athlete[] athletes = [new("a1", "Ada Invented", "ADA"), new("a2", "Bo Invented", "BO")];
        var day = new DateOnly(2031, 3, 6);
        using var logbook = Logbook.Create(folder, "A new club");
        logbook.Commit(new LogbookChange("a first evening")
        {
            Athletes = athletes,
            Protocols = [protocol],
            Sessions = [Session.FromTimes("s1", "a1", day, protocol, 61, 62, 63, 64, 65, 66), Session.FromTimes("s2", "a2", day, protocol, 58, 59, 59, 60, 61, 61)],
        });
    }
}
