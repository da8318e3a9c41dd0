using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>
/// What axe-core finds on a page as it stands, in light and in dark. Frames without scripts cannot be looked into from outside; what they
/// show is looked at as a page of its own.
/// </summary>
internal static class Axe
{
    // A button half-way between two colours has neither's contrast. The cursor of the editor blinks for ever.
    private const string UntilColoursRest = """
        () => new Promise(requestAnimationFrame)
            .then(() => Promise.all(document.getAnimations().filter(motion => Number.isFinite(motion.effect.getComputedTiming().endTime)).map(motion => motion.finished.catch(() => null))))
            .then(() => null)
        """;

    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <summary>Asserts that it finds nothing.</summary>
    public static async Task AssertNothing(IPage page)
    {
        await AssertNothingOn(page);
        foreach (var shown in await page.EvaluateAsync<string[]>("[...document.querySelectorAll('iframe.shown')].slice(0, 3).map(frame => frame.srcdoc)"))
        {
            var alone = await page.Context.NewPageAsync();
            await alone.SetContentAsync(shown);
            await AssertNothingOn(alone, isFrame: true);
            await alone.CloseAsync();
        }
    }

    private static async Task AssertNothingOn(IPage page, bool isFrame = false)
    {
        await page.EvaluateAsync(Script);
        foreach (var scheme in new[] { ColorScheme.Dark, ColorScheme.Light })
        {
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = scheme });

            // What shows in a frame stands on the page's ground, below the page's own heading.
            if (isFrame) await page.EvaluateAsync($"document.body.style.background = '{(scheme == ColorScheme.Dark ? "#16181b" : "#fbfaf7")}'");
            await page.EvaluateAsync(UntilColoursRest);
            var rules = isFrame ? "{ 'page-has-heading-one': { enabled: false } }" : "{}";
            var found = await page.EvaluateAsync<JsonElement>($"axe.run(document, {{ iframes: false, rules: {rules} }}).then(result => result.violations.map(one => ({{ id: one.id, help: one.help, nodes: one.nodes.map(node => node.html.slice(0, 300)) }})))");
            Assert.True(found.GetArrayLength() == 0, $"{scheme}: {found}");
        }
    }
}
