namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Tests in the shared browser. Each closes its windows: a window whose server has ended keeps asking for it, and keeps a core busy.</summary>
public abstract class BrowserTests(TestBrowser browser) : IAsyncLifetime
{
    /// <summary>The browser.</summary>
    protected TestBrowser Browser { get; } = browser;

    /// <inheritdoc />
    public Task InitializeAsync() => Task.CompletedTask;

    /// <inheritdoc />
    public async Task DisposeAsync()
    {
        foreach (var context in Browser.Browser.Contexts.ToList()) await context.CloseAsync();
    }
}
