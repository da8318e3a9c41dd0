using Microsoft.Playwright;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>A logbook that another program has open for writing. Common practice, no source: whoever finds a button switched off is told why.</summary>
[Collection(SharedBrowser.Name)]
public sealed class ReadOnlyTests(TestBrowser browser, ReadOnlyTests.HeldWorkbench workbench) : BrowserTests(browser), IClassFixture<ReadOnlyTests.HeldWorkbench>
{
    [Theory]
    [InlineData("logbook")]
    [InlineData("logbook/type")]
    [InlineData("logbook/files")]
    [InlineData("logbook/athletes")]
    [InlineData("logbook/protocols")]
    [InlineData("logbook/blocks")]
    [InlineData("logbook/days")]
    [InlineData("logbook/sheet")]
    [InlineData("logbook/keeping")]
    public async Task Every_page_of_it_says_why_nothing_can_be_kept(string place)
    {
        var page = await workbench.Open(Browser, "/" + place);
        await Assertions.Expect(page.GetByText("This logbook can be read but not changed here: another program has it open for writing.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Buttons_that_would_change_it_are_switched_off()
    {
        var page = await workbench.Open(Browser, "/logbook/days");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Keep the day" })).ToBeDisabledAsync();
    }

    /// <summary>A workbench on a logbook that these tests themselves have open.</summary>
    public sealed class HeldWorkbench : ServedWorkbench
    {
        private Logbook? _held;

        /// <inheritdoc />
        protected override void Prepare(string folder)
        {
            base.Prepare(folder);
            _held = Logbook.Open(folder);
        }

        /// <inheritdoc />
        protected override void Dispose(bool disposing)
        {
            _held?.Dispose();
            base.Dispose(disposing);
        }
    }
}
