using Microsoft.Playwright;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>What holds for every page.</summary>
[Collection(SharedBrowser.Name)]
public sealed class PageTests(TestBrowser browser, ServedWorkbench workbench) : BrowserTests(browser), IClassFixture<ServedWorkbench>
{
    /// <summary>Addresses of the places.</summary>
    public static TheoryData<string> Places => ["/logbook", "/logbook/type", "/logbook/files", "/logbook/athletes", "/logbook/protocols", "/logbook/blocks", "/logbook/days", "/logbook/sheet", "/logbook/keeping", "/questions", "/questions/01-why-the-slowdown", "/cells", "/cells/01-why-the-slowdown", "/reports", "/reports/beside"];

    [Theory]
    [MemberData(nameof(Places))]
    public async Task A_page_has_no_accessibility_violation_in_light_and_in_dark(string place)
    {
        await Axe.AssertNothing(await Open(place, ColorScheme.Light));
    }

    [Theory]
    [MemberData(nameof(Places))]
    public async Task A_page_asks_for_nothing_from_outside_and_logs_no_error(string place)
    {
        var outside = new List<string>();
        var errors = new List<string>();
        await Open(place, ColorScheme.Light, page =>
        {
            page.Request += (_, request) =>
            {
                if (!request.Url.StartsWith(workbench.Address.AbsoluteUri, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal) && !request.Url.StartsWith("blob:", StringComparison.Ordinal))
                    outside.Add(request.Url);
            };
            page.Console += (_, message) => { if (message.Type == "error") errors.Add(message.Text); };
            page.PageError += (_, error) => errors.Add(error);
        });
        Assert.Empty(outside);
        Assert.Empty(errors);
    }

    [Theory]
    [MemberData(nameof(Places))]
    public async Task A_page_fits_a_window_of_390_pixels_without_scrolling_sideways(string place)
    {
        var page = await Open(place, ColorScheme.Light);
        await page.SetViewportSizeAsync(390, 844);
        var overflow = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.Equal(0, overflow);
    }

    [Theory]
    [InlineData("/logbook")]
    [InlineData("/logbook/days")]
    public async Task A_page_is_printed_dark_on_white_whatever_the_screen_is(string place)
    {
        var page = await Open(place, ColorScheme.Dark);
        await page.EmulateMediaAsync(new() { Media = Media.Print, ColorScheme = ColorScheme.Dark });
        Assert.Equal(["rgb(255, 255, 255)", "rgb(27, 29, 32)"], await page.EvaluateAsync<string[]>("[getComputedStyle(document.body).backgroundColor, getComputedStyle(document.body).color]"));
        Assert.Equal("rgb(255, 255, 255)", await page.Locator("main tbody th").First.EvaluateAsync<string>("name => getComputedStyle(name).backgroundColor"));
        await Assertions.Expect(page.GetByRole(AriaRole.Button)).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task An_address_that_does_not_exist_is_answered_with_a_page_that_leads_on()
    {
        var page = await Open("/nowhere", ColorScheme.Light);
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "There is no such page" })).ToBeVisibleAsync();
        await Axe.AssertNothing(page);
        await page.GetByRole(AriaRole.Link, new() { Name = "To the logbook" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Type a session" }).First).ToBeVisibleAsync();
    }

    private async Task<IPage> Open(string place, ColorScheme scheme, Action<IPage>? watch = null)
    {
        var context = await Browser.Browser.NewContextAsync(new BrowserNewContextOptions { ColorScheme = scheme, ViewportSize = new ViewportSize { Width = 1280, Height = 900 } });
        var page = await context.NewPageAsync();
        watch?.Invoke(page);
        await page.GotoAsync((await workbench.NextFirstAddress()).AbsoluteUri);
        await page.GotoAsync(new Uri(workbench.Address, place).AbsoluteUri);
        await page.Locator("h1").First.WaitForAsync();
        return page;
    }
}
