using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>A workbench that serves its pages for the tests of one class, on a logbook folder of its own.</summary>
public partial class ServedWorkbench : IAsyncLifetime, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("workbench").FullName;
    private readonly Queue<string> _addresses = new();
    private readonly SemaphoreSlim _announced = new(0);
    private readonly System.Collections.Concurrent.ConcurrentQueue<string> _errors = new();
    private Process? _process;

    /// <summary>Scheme, host and port.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>Id of the server's process.</summary>
    public int ProcessId => _process!.Id;

    /// <summary>Further arguments of the command.</summary>
    protected virtual IReadOnlyList<string> MoreArguments => [];

    /// <summary>Fills the logbook: a squad with a season behind it, so that pages are tested with something on them.</summary>
    protected virtual void Prepare(string folder) => SampleFolder.Save(SquadGenerator.Generate(Scenarios.Brackenholt), folder);

    /// <summary>Opens a place in a window of its own.</summary>
    internal async Task<IPage> Open(TestBrowser browser, string place, ColorScheme scheme = ColorScheme.Light)
    {
        var context = await browser.Browser.NewContextAsync(new BrowserNewContextOptions { ColorScheme = scheme, ViewportSize = new ViewportSize { Width = 1280, Height = 900 } });
        context.SetDefaultTimeout(90_000);
        var page = await context.NewPageAsync();
        await page.GotoAsync((await NextFirstAddress()).AbsoluteUri);
        await page.GotoAsync(new Uri(Address, place).AbsoluteUri);
        await page.Locator("h1").First.WaitForAsync();
        await Assertions.Expect(page.Locator("[aria-busy=true]")).ToHaveCountAsync(0, new() { Timeout = 90_000 });
        return page;
    }

    /// <summary>Agrees to a notebook's code.</summary>
    internal static async Task Consent(IPage page)
    {
        var button = page.GetByRole(AriaRole.Button, new() { Name = "I have read it: let it run" });
        await Assertions.Expect(button).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await button.ClickAsync();
        await Assertions.Expect(button).ToHaveCountAsync(0);
    }

    /// <summary>A folder that goes with the tests.</summary>
    public string Folder => _folder;

    /// <summary>The next first address that was printed; each opens once.</summary>
    public async Task<Uri> NextFirstAddress()
    {
        Assert.True(await _announced.WaitAsync(TimeSpan.FromSeconds(60)), $"The workbench printed no address within 60 s. It said: {string.Join('\n', _errors)}");
        lock (_addresses) return new Uri(_addresses.Dequeue());
    }

    /// <inheritdoc />
    public async Task InitializeAsync()
    {
        Prepare(Path.Combine(_folder, "logbook"));
        _process = WorkbenchProcess.Start(_folder, new Dictionary<string, string> { ["XDG_DATA_HOME"] = Path.Combine(_folder, "data") }, ["open", Path.Combine(_folder, "logbook"), "--no-browser", .. MoreArguments]);
        _process.OutputDataReceived += (_, line) => Announce(line.Data);
        _process.ErrorDataReceived += (_, line) => _errors.Enqueue(line.Data ?? "");
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        var first = await NextFirstAddress();
        Address = new Uri(first.GetLeftPart(UriPartial.Authority));
        lock (_addresses) _addresses.Enqueue(first.AbsoluteUri);
        _announced.Release();
    }

    /// <inheritdoc />
    public async Task DisposeAsync()
    {
        _process!.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    /// <inheritdoc />
    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Lets go of what the tests of the class hold.</summary>
    protected virtual void Dispose(bool disposing)
    {
        _process?.Dispose();
        _announced.Dispose();
    }

    private void Announce(string? line)
    {
        if (line is null || FirstAddressPattern().Match(line) is not { Success: true } match) return;
        lock (_addresses) _addresses.Enqueue(match.Value);
        _announced.Release();
    }

    [GeneratedRegex("http://[^ ]+/enter/[^ ]+")]
    private static partial Regex FirstAddressPattern();
}
