using Microsoft.Playwright;

namespace SquadAnalytics.Benchmarks.Browser;

/// <summary>An installed Chromium without a window.</summary>
internal sealed class MeasuringBrowser(IPlaywright playwright, IBrowser browser) : IAsyncDisposable
{
    private static readonly string[] Switches = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    /// <summary>Starts the browser that is installed.</summary>
    public static async Task<MeasuringBrowser> StartAsync()
    {
        var path = new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome", "/snap/bin/chromium" }.FirstOrDefault(File.Exists);
        var playwright = await Playwright.CreateAsync();
        return new(playwright, await playwright.Chromium.LaunchAsync(new() { ExecutablePath = path, Args = Switches }));
    }

    /// <summary>A window of its own.</summary>
    public async Task<IPage> WindowAsync()
    {
        var context = await browser.NewContextAsync(new() { ViewportSize = new ViewportSize { Width = 1280, Height = 900 } });
        context.SetDefaultTimeout(180_000);
        return await context.NewPageAsync();
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        await browser.CloseAsync();
        playwright.Dispose();
    }
}
