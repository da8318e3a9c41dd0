using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Whole journeys of a coach who writes no code, each with a wrong turn in it.</summary>
[Collection(SharedBrowser.Name)]
public sealed class JourneyTests(TestBrowser browser, ServedWorkbench workbench) : BrowserTests(browser), IClassFixture<ServedWorkbench>
{
    [Fact]
    public async Task A_file_with_a_mistake_is_mended_kept_and_taken_back()
    {
        var page = await Open("/logbook/files");
        var name = LogbookSquad().Athletes[0].DisplayName;
        await page.GetByLabel("or paste from a spreadsheet").FillAsync($"Name\tDate\tProtocol\tSet 1\tSet 2\tSet 3\n{name}\t2035-03-01\tTall Three\t61.2\t1:72\t63.0\n");
        await page.GetByLabel("or paste from a spreadsheet").BlurAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Read what was pasted" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("1 row read: 0 kept, 1 refused");
        await page.GetByLabel("Set 2", new() { Exact = true }).FillAsync("1:02");
        await page.GetByRole(AriaRole.Button, new() { Name = "Read again" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep 1 session" }).ClickAsync();
        await Assertions.Expect(page.GetByText("1 session is in the logbook.")).ToBeVisibleAsync();
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
        await Assertions.Expect(page.Locator("ol.findings > li").First).ToContainTextAsync("a stopwatch cannot say");
        await page.GotoAsync(new Uri(workbench.Address, "/reports").AbsoluteUri);
        var report = page.GetByRole(AriaRole.Link, new() { Name = "Why does this boxer slow down?" }).First;
        await Assertions.Expect(report).ToBeVisibleAsync();
        var opened = await page.Context.RunAndWaitForPageAsync(() => report.ClickAsync());
        await Assertions.Expect(opened.GetByRole(AriaRole.Heading, new() { Name = "Findings" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task An_answer_that_is_stopped_says_so_and_can_be_asked_for_again()
    {
        var page = await Open("/questions/04-season-review");
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop", Exact = true }).ClickAsync();

        // While it starts there is no cell yet that could say so.
        await Assertions.Expect(page.GetByText(new Regex("Stopped by request|stopped before anything was computed")).First).ToBeVisibleAsync();
        await Axe.AssertNothing(page);
        await Ask(page);
        await Assertions.Expect(page.GetByText("There is no")).ToHaveCountAsync(0);
    }

    [Theory]
    [InlineData("02-this-week")]
    [InlineData("04-season-review")]
    [InlineData("05-where-everyone-stands")]
    [InlineData("06-plan-the-tests")]
    public async Task A_question_asked_as_its_form_stands_is_answered_in_full(string name)
    {
        var page = await Open("/questions/" + name);
        await Ask(page);
        await Assertions.Expect(page.GetByText("There is no")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("ol.findings > li").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_day_that_may_be_empty_can_be_set_and_emptied_again()
    {
        var page = await Open("/questions/04-season-review");
        var first = page.GetByLabel("First day; empty for the first test");
        await Assertions.Expect(first).ToHaveValueAsync("");

        // The days stand latest first: the last test as the first day, the one before as the last.
        await first.SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.GetByLabel("Last day; empty for the last test").SelectOptionAsync(new SelectOptionValue { Index = 2 });
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("section[aria-label=Answer] .warn")).ToContainTextAsync("comes after the last");
        await first.SelectOptionAsync([""]);
        await Ask(page);
        await Assertions.Expect(page.GetByText("There is no")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_coach_compares_two_blocks_changes_the_dates_takes_the_change_back_and_prints()
    {
        var page = await Open("/questions/03-two-blocks");
        await Ask(page);

        // The second block a week shorter: a wrong turn, seen beside the first answer and taken back.
        await page.GotoAsync(new Uri(workbench.Address, "/logbook/blocks").AbsoluteUri);
        var before = LogbookSquad().Blocks.OrderBy(block => block.From).Last();
        await page.GetByRole(AriaRole.Button, new() { Name = $"Change {before.Name}" }).ClickAsync();
        await page.GetByLabel("To", new() { Exact = true }).FillAsync(before.To.AddDays(-7).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Add a block" })).ToBeVisibleAsync();
        Assert.Equal(before.To.AddDays(-7), LogbookSquad().Blocks.Single(block => block.Id == before.Id).To);
        await page.GotoAsync(new Uri(workbench.Address, "/questions/03-two-blocks").AbsoluteUri);
        await Ask(page);

        await page.GotoAsync(new Uri(workbench.Address, "/reports/beside").AbsoluteUri);
        await Assertions.Expect(page.GetByRole(AriaRole.Rowheader, new() { Name = "Data" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".beside ol.findings")).ToHaveCountAsync(2);
        await Axe.AssertNothing(page);
        Assert.True((await page.PdfAsync(new() { Format = "A4" })).Length > 10_000);

        await page.GotoAsync(new Uri(workbench.Address, "/logbook").AbsoluteUri);
        await page.Locator("fluent-button", new() { HasText = "Take back:" }).ClickAsync();
        await Waiting.Until(() => LogbookSquad().Blocks.Single(block => block.Id == before.Id).To == before.To);
    }

    [Fact]
    public async Task An_answer_is_taken_along_as_a_document_and_the_logbook_notes_it()
    {
        var page = await Open("/questions/01-why-the-slowdown");
        await Ask(page);
        await Axe.AssertNothing(page);
        await page.GotoAsync(new Uri(workbench.Address, "/reports").AbsoluteUri);
        var document = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "document of Why does this boxer slow down?" }).First.ClickAsync());
        Assert.EndsWith(".docx", document.SuggestedFilename, StringComparison.Ordinal);
        Assert.Equal("PK"u8.ToArray(), (await File.ReadAllBytesAsync(await document.PathAsync()))[..2]);
        using var logbook = Logbook.Open(Path.Combine(workbench.Folder, "logbook"));
        Assert.Contains(logbook.Exports, export => export.Destination == "a download in the browser");
    }

    [Fact]
    public async Task Two_windows_type_into_one_session_and_clearing_asks_first()
    {
        var one = await Open("/logbook/type");
        await one.GetByLabel("Date").FillAsync("2035-06-07");
        await one.GetByLabel("Date").BlurAsync();
        await one.GetByLabel("Protocol").SelectOptionAsync(["tall-three"]);
        await one.GetByLabel("Place", new() { Exact = true }).FillAsync("the old hall");
        await Type(one, 0, "70.5");
        var two = await one.Context.NewPageAsync();
        await two.GotoAsync(one.Url);
        await Assertions.Expect(two.GetByText("Here is what was typed for 7 June 2035")).ToBeVisibleAsync();
        await Assertions.Expect(two.GetByLabel("Place", new() { Exact = true })).ToHaveValueAsync("the old hall");

        // What one types the other shows, and half a time is no mistake while it is being typed.
        await Type(two, 1, "71");
        await Assertions.Expect(Cell(one, 1)).ToHaveValueAsync("71");
        await Cell(one, 2).FillAsync("72.");
        await Assertions.Expect(Cell(one, 2)).ToHaveAttributeAsync("aria-invalid", "false");
        await Cell(one, 2).FillAsync("72.5");
        await Cell(one, 2).PressAsync("Enter");
        await Assertions.Expect(Cell(two, 2)).ToHaveValueAsync("72.5");

        // What is being typed over stays while the other window goes on.
        await Cell(one, 0).FillAsync("70.");
        await Cell(two, 3).FillAsync("73");
        await Cell(two, 3).PressAsync("Enter");
        await Assertions.Expect(Cell(one, 3)).ToHaveValueAsync("73");
        await Assertions.Expect(Cell(one, 0)).ToHaveValueAsync("70.");
        await Cell(one, 0).FillAsync("70.5");
        await Cell(one, 0).PressAsync("Enter");

        await one.GetByRole(AriaRole.Button, new() { Name = "Clear the grid" }).ClickAsync();
        await Axe.AssertNothing(one);
        await one.GetByRole(AriaRole.Button, new() { Name = "Go on typing" }).ClickAsync();
        await Assertions.Expect(Cell(one, 0)).ToHaveValueAsync("70.5");
        await two.Locator("fluent-button", new() { HasText = "Keep the session" }).ClickAsync();
        await Assertions.Expect(one.GetByText("kept or cleared in another window")).ToBeVisibleAsync();
        Assert.Equal(4, LogbookSquad().Sessions.Count(session => session.Date == new DateOnly(2035, 6, 7) && session.Place == "the old hall"));
    }

    private static ILocator Cell(IPage page, int row) => page.Locator($"input[data-grid-row='{row}'][data-grid-column='1']");

    private static async Task Type(IPage page, int row, string text)
    {
        await Cell(page, row).FillAsync(text);
        await Cell(page, row).PressAsync("Enter");
    }

    private static async Task Ask(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("section[aria-label=Answer] ol.findings > li").First).ToBeVisibleAsync(new() { Timeout = 300_000 });
    }

    private Squad LogbookSquad()
    {
        using var logbook = Logbook.Open(Path.Combine(workbench.Folder, "logbook"));
        return logbook.Squad;
    }

    private Task<IPage> Open(string place) => workbench.Open(Browser, place);
}
