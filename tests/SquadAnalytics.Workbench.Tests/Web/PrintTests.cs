using System.Text;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Storage;
using SquadAnalytics.Workbench.Commands;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Pages that are made to be printed, in a browser: how many sides of A4, on a phone, and for those who cannot see them.</summary>
[Collection(SharedBrowser.Name)]
public sealed partial class PrintTests(TestBrowser browser)
{
    private static readonly DateOnly Day = new(2031, 4, 3);

    private static Squad Sample()
    {
        using var logbook = Logbook.Open(Shipped.SampleSquad);
        return logbook.Squad;
    }

    [Fact]
    public async Task A_handout_is_one_side_of_A4_and_readable_by_everybody()
    {
        var squad = Sample();
        await using var context = await browser.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 800 } });
        var page = await context.NewPageAsync();
        foreach (var athlete in squad.Athletes.Where((_, k) => k % 6 == 0))
        {
            if (!Handout.Of(squad, athlete.Id, new() { DataNote = "Invented data." }).TryGet(out var handout)) continue;
            await Show(page, handout.ToHtml());
            Assert.Equal(1, await Sides(page));
            await AssertSound(page);
        }
    }

    [Fact]
    public async Task A_sheet_prints_on_A4_with_every_box_within_the_page()
    {
        var squad = Sample();
        var protocol = squad.Protocol("six-five");
        await using var context = await browser.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 1280, Height = 900 } });
        var page = await context.NewPageAsync();
        await Show(page, RecordingSheet.Of(squad, protocol, Day).ToHtml());
        Assert.Equal(1, await Sides(page));
        await AssertSound(page);
        await Show(page, RecordingSheet.Of(squad, protocol, Day, new() { Landscape = true }).ToHtml());
        Assert.InRange(await Sides(page), 1, 3);
        await Show(page, RecordingSheet.Of(squad, protocol, Day, new() { Stations = true, HeatSize = 30 }).ToHtml());
        await AssertSound(page);

        // On paper the station table is no wider than the page: 186 mm are 703 px at 96 to the inch.
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await page.SetViewportSizeAsync(703, 900);
        Assert.True(await page.EvaluateAsync<bool>("[...document.querySelectorAll('table')].every(table => table.getBoundingClientRect().right <= 704)"));
    }

    private static async Task Show(IPage page, string html)
    {
        var outside = new List<string>();
        page.Request += Noted;
        var file = Path.Combine(Path.GetTempPath(), $"squad-print-{Guid.NewGuid():N}.html");
        await File.WriteAllTextAsync(file, html);
        try
        {
            await page.GotoAsync(new Uri(file).AbsoluteUri);
        }
        finally
        {
            File.Delete(file);
            page.Request -= Noted;
        }

        Assert.Empty(outside);

        void Noted(object? sender, IRequest request)
        {
            if (!request.Url.StartsWith("file:", StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal)) outside.Add(request.Url);
        }
    }

    private static async Task AssertSound(IPage page)
    {
        Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= window.innerWidth"), "The page is wider than the screen.");
        var found = await page.RunAxe();
        Assert.Equal("", string.Join("\n", found.Violations.Select(violation => $"{violation.Id}: {violation.Help}")));
    }

    private static async Task<int> Sides(IPage page) =>
        PageObject().Count(Encoding.Latin1.GetString(await page.PdfAsync(new() { PreferCSSPageSize = true, PrintBackground = true })));

    [GeneratedRegex(@"/Type\s*/Page(?![s\w])")]
    private static partial Regex PageObject();
}
