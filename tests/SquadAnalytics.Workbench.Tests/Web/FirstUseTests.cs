using Microsoft.Playwright;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>The workbench on an empty folder.</summary>
[Collection(SharedBrowser.Name)]
public sealed class FirstUseTests(TestBrowser browser, EmptyWorkbench workbench) : BrowserTests(browser), IClassFixture<EmptyWorkbench>
{
    public static TheoryData<string> Places => ["/logbook", "/logbook/type", "/logbook/athletes", "/logbook/days", "/logbook/blocks", "/logbook/sheet", "/questions/01-why-the-slowdown", "/reports", "/reports/beside", "/no/such/page"];

    [Theory]
    [MemberData(nameof(Places))]
    public async Task A_page_with_nothing_to_show_is_sound_and_leads_on(string place)
    {
        var page = await workbench.Open(Browser, place);
        await Axe.AssertNothing(page);
        await Assertions.Expect(page.Locator("main a, main button").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Three_ways_in_are_shown_and_the_sample_leaves_the_own_logbook_alone()
    {
        var page = await workbench.Open(Browser, "/logbook");
        await Assertions.Expect(page.Locator(".ways > section")).ToHaveCountAsync(3);
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at the sample" }).ClickAsync();
        await Assertions.Expect(page.GetByText("You are looking at the invented sample squad.")).ToBeVisibleAsync();
        await Axe.AssertNothing(page);

        // Nobody of the sample is in the squad today: its days begin with the last test.
        await page.GotoAsync(new Uri(workbench.Address, "/logbook/days").AbsoluteUri);
        await Assertions.Expect(page.GetByLabel("Date").First).ToHaveValueAsync("2031-03-27");
        await page.GetByRole(AriaRole.Button, new() { Name = "Later:" }).ClickAsync();
        await Assertions.Expect(page.GetByLabel("Date").First).ToHaveValueAsync("2031-03-28");
        await page.GetByRole(AriaRole.Button, new() { Name = "Back to your own logbook" }).ClickAsync();
        await Assertions.Expect(page.GetByText("There is nothing in this logbook yet.")).ToBeVisibleAsync();
    }

    [Theory]
    [InlineData("01-why-the-slowdown", "an athlete")]
    [InlineData("03-two-blocks", "two training blocks")]
    [InlineData("05-where-everyone-stands", "a session, from a file or typed")]
    public async Task A_question_names_what_has_to_be_entered_first(string name, string lack)
    {
        var page = await workbench.Open(Browser, "/questions/" + name);
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = lack })).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "a protocol" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Describe a protocol" })).ToBeVisibleAsync();
    }
}

/// <summary>A server on an empty folder.</summary>
public sealed class EmptyWorkbench : ServedWorkbench
{
    /// <inheritdoc />
    protected override void Prepare(string folder) => Directory.CreateDirectory(folder);
}
